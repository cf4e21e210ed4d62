/**
 * How does this window hear at once what was changed in another one, or by anybody else? One window of this browser
 * listens to the server and tells the others, because a browser keeps few connections to one server. When that window is
 * closed the next one listens.
 */

export interface LiveTools {
  /** Documents were changed in the records: kind and id, joined by a slash. */
  readonly changed: (documents: readonly string[]) => void;
  /** The stream began: what happened before it is not known. The server names its workshop. */
  readonly began: (workshop: string | undefined) => void;
  readonly lost: () => void;
}

const LOCK = "coldset.listen";
const CHANNEL = "coldset.live";
/** The server says something at least every 15 s. */
const SILENCE_MS = 40_000;
const AGAIN_MS = 2_000;

type Word =
  | { readonly what: "changed"; readonly documents: readonly string[] }
  | { readonly what: "began"; readonly workshop: string | undefined }
  | { readonly what: "lost" };

export function listenLive(tools: LiveTools): void {
  const channel = typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel(CHANNEL);
  const hear = (word: Word) => {
    if (word.what === "changed") tools.changed(word.documents);
    else if (word.what === "began") tools.began(word.workshop);
    else tools.lost();
  };
  const tell = (word: Word) => {
    channel?.postMessage(word);
    hear(word);
  };
  channel?.addEventListener("message", (event: MessageEvent<Word>) => hear(event.data));
  const forEver = () => new Promise<void>(() => listenTo(tell));
  if (typeof navigator.locks === "undefined" || channel === undefined) void forEver();
  else void navigator.locks.request(LOCK, forEver);
}

function listenTo(tell: (word: Word) => void): void {
  let source: EventSource | undefined;
  let silence: ReturnType<typeof setTimeout> | undefined;
  let up: boolean | undefined;
  const again = () => {
    clearTimeout(silence);
    source?.close();
    source = undefined;
    if (up !== false) tell({ what: "lost" });
    up = false;
    setTimeout(open, AGAIN_MS);
  };
  const alive = () => {
    clearTimeout(silence);
    silence = setTimeout(again, SILENCE_MS);
  };
  const open = () => {
    source = new EventSource("/api/events");
    source.addEventListener("began", (event) => {
      alive();
      up = true;
      tell({ what: "began", workshop: event.data === "" ? undefined : event.data });
    });
    source.addEventListener("beat", alive);
    source.addEventListener("kept", (event) => {
      alive();
      const documents: unknown = JSON.parse(event.data);
      if (Array.isArray(documents)) tell({ what: "changed", documents: documents.map(String) });
    });
    source.addEventListener("error", again);
  };
  open();
}
