/**
 * Which workshop answers at this address? Another one may be served on the same port one day: then nothing that was
 * entered for the first may go into the second. Each answer of the server names its workshop; the browser keeps the
 * name, so that it is known without the server, too.
 */
import { browserKeep, heardElsewhere, type Keep } from "./kept.js";

/** In answers: the workshop that answers. In requests: the one that it is meant for. */
export const WORKSHOP_HEADER = "coldset-workshop";
const NAME = "workshop";

export interface WhichWorkshop {
  /** Undefined until a server has named one in this browser. */
  readonly now: () => string | undefined;
  /** The server, or another window, named it. */
  readonly heard: (name: string | null | undefined) => void;
  /** Tells when it is known or another one. `other`: there was one before. */
  readonly onChange: (tell: (other: boolean) => void) => void;
}

export function whichWorkshop(keep: Keep): WhichWorkshop {
  let name = keep.get(NAME);
  const listeners: ((other: boolean) => void)[] = [];
  return {
    now: () => name,
    heard: (heard) => {
      if (heard === null || heard === undefined || heard === "" || heard === name) return;
      const other = name !== undefined;
      name = heard;
      keep.set(NAME, heard);
      for (const tell of listeners) tell(other);
    },
    onChange: (tell) => void listeners.push(tell),
  };
}

/** Of this window. */
export const servedHere = whichWorkshop(browserKeep);

/** Headers for a request that is meant for the workshop that this page shows, and no other. */
export const meantFor = (name = servedHere.now()): Readonly<Record<string, string>> =>
  name === undefined ? {} : { [WORKSHOP_HEADER]: name };

export function followOtherWindows(): void {
  heardElsewhere(NAME, () => servedHere.heard(browserKeep.get(NAME)));
}
