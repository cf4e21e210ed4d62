/** What does the page know of the open build, and what can be done with it? */
import type { Reckoning } from "@coldset/core/questions";
import type { EditPath } from "@coldset/core/workshop";
import type { OpenDoc } from "./laid.js";
import type { Choice, Conflict, QueueState } from "./queue-types.js";

/** A text that a person typed and that cannot be read. It stays as typed. */
export interface Draft {
  readonly text: string;
  readonly messages: readonly string[];
  /** What stood there when the person began to type. */
  readonly seen?: unknown;
}

export interface Edit {
  readonly kind: string;
  readonly id: string;
  readonly path: EditPath;
  readonly value: unknown;
  readonly words: string;
  /** It puts back what stood there before: the records keep it as an undo. */
  readonly takesBack?: boolean;
}

export type Status = "loading" | "ready" | "missing" | "unreachable" | "failed" | "unreadable";

export interface Workshop {
  readonly buildId: string;
  readonly status: Status;
  readonly problems: readonly string[];
  /** As the person means them: what waits is laid over what the records have. */
  readonly docs: readonly OpenDoc[];
  readonly reckoning?: Reckoning;
  /** The reckoning before the last edit, and the edit. */
  readonly last?: {
    readonly before: Reckoning;
    readonly edit: Edit;
    readonly was: unknown;
    /** It was made in another window, or by somebody else. */
    readonly elsewhere?: boolean;
  };
  /** Edits that can be taken back, the newest last. */
  readonly made: readonly { readonly edit: Edit; readonly was: unknown }[];
  readonly drafts: Readonly<Record<string, Draft>>;
  readonly queue: QueueState;
  /** Said aloud to somebody who does not see the page. */
  readonly said: string;
  readonly open: (buildId: string) => Promise<void>;
  /**
   * `more`: the same field is still being written in, so that it counts as one edit. `seen`: what the person saw in the
   * field, where that may not be what stands there now.
   */
  readonly edit: (edit: Edit, more?: boolean, seen?: { readonly value: unknown }) => boolean;
  readonly takeBack: () => void;
  /** Reads the open build anew, and is done when that is shown. */
  readonly reload: () => Promise<void>;
  /** The records took something back or put it back: what this window had made is part of that. */
  readonly turned: (words: string) => void;
  /** Chooses between two values of one place, as they were shown. */
  readonly settle: (shown: Conflict, choice: Choice) => void;
  /** Tries an entry again that the records would not take, or lets it go. */
  readonly sendAgain: (key: string) => void;
  readonly letGo: (key: string) => void;
  /** Begins to hand over what waits, whether a build is open or not. */
  readonly start: () => void;
  readonly say: (words: string) => void;
}

export const draftKey = (kind: string, id: string, path: EditPath) => `${kind}/${id}/${path.join(".")}`;
