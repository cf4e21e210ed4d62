/**
 * Why is this imported before everything else? The schema library tries out whether it may make functions from text,
 * which the server's policy forbids. Told beforehand, it does not try, and the browser has nothing to report.
 */
import { config } from "zod";

config({ jitless: true });
