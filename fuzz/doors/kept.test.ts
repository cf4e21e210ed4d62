import { testDoor } from "../test-door.js";
import { kept } from "./kept.js";

testDoor(kept, { accepted: 0.34 });
