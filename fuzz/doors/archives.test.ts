import { testDoor } from "../test-door.js";
import { archives } from "./archives.js";

testDoor(archives, {
  accepted: 0.15,
  ways: ["accepted looked at", "accepted taken in", "refused archive-broken", "refused archive-changed"],
});
