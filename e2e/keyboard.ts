/** How does somebody without a pointer come to a thing on the page? Tab by Tab, knowing it by what a screen reader says. */
import type { Page } from "playwright-core";

const MOST = 400;

interface Focused {
  readonly role: string;
  readonly name: string;
}

/** Role and name of what has the focus, as the browser tells them to a screen reader. */
async function focused(page: Page): Promise<Focused | undefined> {
  const session = await page.context().newCDPSession(page);
  try {
    const { result } = await session.send("Runtime.evaluate", { expression: "document.activeElement" });
    if (result.objectId === undefined) return undefined;
    const { nodes } = await session.send("Accessibility.getPartialAXTree", {
      objectId: result.objectId,
      fetchRelatives: false,
    });
    const [node] = nodes;
    return { role: String(node?.role?.value ?? ""), name: String(node?.name?.value ?? "").trim() };
  } finally {
    await session.detach();
  }
}

const fits = (wanted: string | RegExp, found: string) =>
  typeof wanted === "string" ? found === wanted : wanted.test(found);

/** Presses Tab until the focus is on what has this role and this name. */
export async function reach(page: Page, role: string | RegExp, name: string | RegExp): Promise<void> {
  const passed: string[] = [];
  for (let i = 0; i < MOST; i += 1) {
    const at = await focused(page);
    if (at !== undefined && fits(role, at.role) && fits(name, at.name)) return;
    passed.push(`${at?.role} "${at?.name}"`);
    await page.keyboard.press("Tab");
  }
  throw new Error(
    `the keyboard does not come to ${role} ${name}; it came to ${[...new Set(passed)].join(", ").slice(0, 3000)}`,
  );
}

/** Element and words of what has the focus; "BODY" where it is lost. */
export function focusWords(page: Page): Promise<string> {
  return page.evaluate(() => {
    const el = document.activeElement;
    return `${el?.tagName ?? "NOTHING"} ${el?.tagName === "BODY" ? "" : (el?.textContent ?? "").trim()}`;
  });
}

/** What a screen reader calls the field at this place, so that the keyboard can look for it. */
export async function nameOf(page: Page, selector: string): Promise<string> {
  const session = await page.context().newCDPSession(page);
  try {
    const { result } = await session.send("Runtime.evaluate", {
      expression: `document.querySelector(${JSON.stringify(selector)})`,
    });
    const { nodes } = await session.send("Accessibility.getPartialAXTree", {
      objectId: result.objectId ?? "",
      fetchRelatives: false,
    });
    return String(nodes[0]?.name?.value ?? "").trim();
  } finally {
    await session.detach();
  }
}
