import { testDoor } from "../test-door.js";
import { edits } from "./edits.js";

testDoor(edits, { accepted: 0.3 });
