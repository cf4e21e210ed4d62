/** Does the server answer, is there a newer page, and who shows what has to be chosen? */
import { say } from "@coldset/core/texts";
import { create } from "zustand";

export interface Health {
  /** Undefined until anything was asked. */
  readonly reached?: boolean;
  /** Said aloud once for each turn. */
  readonly said: string;
  /** Takes over the newer page that is ready. */
  readonly newer?: (() => void) | undefined;
  /** Another window took over a newer page: this one still runs the old one, whole. */
  readonly outdated: boolean;
  /** How many bars on the page show what has to be chosen; none: the frame does. */
  readonly bars: number;
}

export const useHealth = create<Health>()(() => ({ said: "", outdated: false, bars: 0 }));

export function reachedServer(reached: boolean): void {
  const was = useHealth.getState().reached;
  if (was === reached) return;
  const said = !reached
    ? say("web.health.offline-the-server-does-not-answer")
    : was === false
      ? say("web.health.the-server-answers-again-what-waited")
      : "";
  useHealth.setState({ reached, said });
}
