/** How is a sentence of our own with figures in it shown? In the units and with the decimal sign that were chosen. */
import { useNumbers } from "../state/numbers.js";

export function Said({ text }: { readonly text: string }) {
  return <>{useNumbers().say(text)}</>;
}
