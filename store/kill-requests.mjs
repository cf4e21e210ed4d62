/**
 * Which requests write, and what does the answer to each claim? One after the other, as a page sends them, until the server
 * is killed; a request whose answer never came claims nothing.
 */
import { changeClaims, judgeMarks, markClaims, otherText, revisionClaim, versionClaim } from "./kill-claims.mjs";
import { photoOf } from "./kill-photo.mjs";

/**
 * @typedef {import("./kill-look.mjs").View} View
 * @typedef {import("./kill-look.mjs").Claim} Claim
 * @typedef {{ method?: string, type?: string, body: unknown }} Sent
 * @typedef {(writer: string, at: string, sent: Sent, claims: (answer: any) => readonly Claim[]) => Promise<any>} Ask
 *   gives the answer; undefined where somebody else was quicker
 * @typedef {{ ask: Ask, known: ReadonlyMap<string, number>, n: string, number: number, judge: (judge: (view: View) => readonly string[]) => void }} Page
 * @typedef {{ name: string, alone?: boolean, ready?: (page: Page) => Promise<any>, write: (page: Page, ready: any) => Promise<unknown> }} RequestWriter
 */

const DONOR = "/api/documents/donor/q1";
const PHOTO_BYTES = 300_000;
const json = (/** @type {unknown} */ body) => ({ body });

/** On the newest revision that the page knows; where somebody was quicker, once more on what stands now. @param {Page} page @param {string} kind @param {string} id @param {readonly string[]} path @param {unknown} value */
async function edit({ ask, known }, kind, id, path, value) {
  const at = `/api/documents/${kind}/${id}/edits`;
  for (let tries = 0; tries < 5; tries += 1) {
    const answer = await ask("edit", at, json({ path, value, revision: known.get(at) ?? 1 }), (said) => [
      revisionClaim(`${kind} ${id}`, said.revision, (row) => row.after === said.text),
    ]);
    if (answer !== undefined) return answer;
  }
  return undefined;
}

/** @param {Page} page */
const title = (page) => edit(page, "build", "quayside", ["title"], `Old hybrid, state ${page.n}`);

/** @param {Page} page @param {"undo" | "redo"} what */
const turn = ({ ask }, what) =>
  ask(what, `/api/history/quayside/${what}`, json({}), (answer) => changeClaims(answer, what));

/** @param {Page} page */
const photo = ({ ask, n }) => {
  const { bytes, sha256 } = photoOf(PHOTO_BYTES);
  const at = `/api/documents/${["donor/q1", "build/quayside", "shop/harbour", "rider/r1"][n.length % 4]}/photos`;
  return ask("photo", `${at}?caption=state%20${n}`, { type: "image/png", body: bytes }, (answer) => [
    {
      what: `photo ${answer.photo.photo}`,
      holds: (view) => view.photos.get(answer.photo.photo)?.sha256 === sha256,
    },
  ]);
};

/** @param {Page} page @param {string} name */
const name = ({ ask }, name) => ask("name", "/api/versions/quayside", json({ name }), () => [versionClaim(name)]);

/** @type {readonly RequestWriter[]} */
export const REQUESTS = [
  { name: "edit", write: title },
  { name: "undo", alone: true, ready: title, write: (page) => turn(page, "undo") },
  {
    name: "redo",
    alone: true,
    ready: async (page) => {
      await title(page);
      await turn(page, "undo");
    },
    write: (page) => turn(page, "redo"),
  },
  {
    name: "restore",
    alone: true,
    ready: async (page) => {
      const version = `before ${page.n}`;
      await name(page, version);
      await title(page);
      await edit(page, "donor", "q1", ["price"], 3000 + page.number);
      return version;
    },
    write: ({ ask, judge }, version) => {
      judge((view) => {
        const changes = [...view.changes.values()].filter((c) => c.what === "restore" && c.words === version);
        const rows = changes.map((c) => [...view.histories.values()].flat().filter((row) => row.change === c.change));
        return rows.some((r) => r.length !== 2) ? [`half of the restore of ${version} is there`] : [];
      });
      return ask("restore", "/api/versions/quayside/restore", json({ name: version }), (a) =>
        changeClaims(a, "restore"),
      );
    },
  },
  {
    name: "restore a document",
    alone: true,
    ready: (page) => edit(page, "donor", "q1", ["price"], 4000 + page.number),
    write: ({ ask }) =>
      ask("restore a document", `${DONOR}/restore`, json({ revision: 1 }), (answer) => changeClaims(answer, "restore")),
  },
  { name: "name", write: (page) => name(page, `state ${page.n}`) },
  { name: "photo", write: photo },
  {
    name: "photo taken away",
    ready: photo,
    write: ({ ask }, kept) =>
      ask("photo taken away", `/api/photos/${kept.photo.photo}`, { method: "DELETE", body: undefined }, () => [
        {
          what: `the taking away of photo ${kept.photo.photo}`,
          holds: (view) => typeof view.photos.get(kept.photo.photo)?.taken_away_at === "string",
        },
      ]),
  },
  {
    name: "import",
    alone: true,
    write: ({ ask, judge, n, number }) => {
      const { text, marks } = otherText(`From a page ${n}`, 80_000 + number);
      judge((view) => judgeMarks(view, marks, "an import").wrong);
      const at = "/api/archive?label=other.yaml&take=yes&choice=take-theirs";
      return ask("import", at, { type: "text/yaml", body: text }, () => markClaims(marks));
    },
  },
  {
    name: "new build",
    write: ({ ask, judge, n }) => {
      const called = `Old blue ${n}`;
      judge((view) => {
        const made = [...view.histories].find(
          ([doc, rows]) => doc.startsWith("build ") && rows[0]?.after.includes(called),
        );
        const change = made?.[1][0]?.change;
        const with_ = [...view.histories.values()].filter((rows) => rows[0]?.change === change).length;
        return made !== undefined && with_ < 2 ? [`half of the new build ${called} is there`] : [];
      });
      return ask("new build", "/api/builds", json({ entries: { name: called } }), (answer) =>
        answer.documents.map((/** @type {any} */ d) => ({
          what: `${d.kind} ${d.id}`,
          holds: (/** @type {View} */ view) => view.texts.has(`${d.kind} ${d.id}`),
        })),
      );
    },
  },
];

/** Two others who edit at the same time. @param {Page} page @param {number} who */
export const background = (page, who) =>
  who === 0
    ? edit(page, "donor", "q1", ["measured", "chainstay"], 430 + (page.number % 40))
    : edit(page, "build", "quayside", ["title"], `Old hybrid, state ${page.number}`);
