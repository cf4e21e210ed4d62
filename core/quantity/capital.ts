/** How does a sentence begin? With a capital; the rest stays as it is. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
