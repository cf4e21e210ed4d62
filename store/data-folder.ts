/**
 * In which folder do the records of this person live? The place that the system keeps for it, or the one that the
 * person named in COLDSET_DATA.
 * Linux: $XDG_DATA_HOME/coldset, else ~/.local/share/coldset (XDG Base Directory Specification 0.8: a relative
 * $XDG_DATA_HOME is to be ignored). macOS: ~/Library/Application Support/Coldset. Windows: %LOCALAPPDATA%\Coldset.
 */

import path from "node:path";
import { say } from "@coldset/core/texts";

export function dataFolder(
  env: Readonly<Record<string, string | undefined>>,
  platform: string,
  /** The person's home folder. */
  home: string,
): string {
  const paths = platform === "win32" ? path.win32 : path.posix;
  const named = env.COLDSET_DATA;
  if (named !== undefined && named !== "") return paths.resolve(named);
  if (platform === "win32") {
    const local = env.LOCALAPPDATA;
    return paths.join(
      local !== undefined && paths.isAbsolute(local) ? local : paths.join(home, "AppData", "Local"),
      "Coldset",
    );
  }
  if (platform === "darwin")
    return paths.join(home, "Library", say("store.data-folder.application-support"), "Coldset");
  const xdg = env.XDG_DATA_HOME;
  return paths.join(xdg !== undefined && paths.isAbsolute(xdg) ? xdg : paths.join(home, ".local", "share"), "coldset");
}
