import { describe, expect, it } from "vitest";
import { type EditCall, sendEdit } from "./api.js";

const CALL: EditCall = {
  kind: "donor",
  id: "q1",
  path: ["measured", "chainstay"],
  value: 441,
  revision: 3,
  editId: "edit-0001",
  workshop: "first",
};

/** A server that gives these answers one after the other; undefined: the answer is lost. */
function answering(...answers: readonly (Response | undefined)[]) {
  const asked: { readonly body: Record<string, unknown>; readonly headers: Headers }[] = [];
  const fetcher: typeof fetch = async (_place, init) => {
    const answer = answers[asked.length];
    asked.push({ body: JSON.parse(String(init?.body)), headers: new Headers(init?.headers) });
    if (answer === undefined) throw new TypeError("the line broke");
    return answer;
  };
  return { asked, fetcher };
}
const json = (body: unknown, status = 200) => Response.json(body, { status });

describe("an edit that is sent", () => {
  it("goes out again under its own id where the answer was lost", async () => {
    const { asked, fetcher } = answering(undefined, json({ kind: "edited", revision: 4, text: "", repeated: true }));
    expect(await sendEdit(CALL, fetcher)).toEqual({ kind: "unreachable" });
    expect(await sendEdit(CALL, fetcher)).toEqual({ kind: "saved", revision: 4, repeated: true });
    expect(asked.map((a) => a.body.editId)).toEqual(["edit-0001", "edit-0001"]);
    expect(asked[1]?.body).toEqual(asked[0]?.body);
  });

  it("names the workshop that it was made for, and is set apart where another one answers", async () => {
    const { asked, fetcher } = answering(json({ kind: "refused", refusals: [] }, 412));
    expect(await sendEdit(CALL, fetcher)).toEqual({ kind: "apart" });
    expect(asked[0]?.headers.get("coldset-workshop")).toBe("first");
  });
});
