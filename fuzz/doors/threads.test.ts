import { testDoor } from "../test-door.js";
import { threads } from "./threads.js";

testDoor(threads, { accepted: 0.4, ways: ["accepted metric", "accepted threads per inch", "refused bad-thread"] });
