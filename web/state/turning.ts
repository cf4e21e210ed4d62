/** Is this window itself taking something back in the records? Then what moves was not done elsewhere. */
export const turning = { on: false };
