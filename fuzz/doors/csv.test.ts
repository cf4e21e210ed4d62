import { testDoor } from "../test-door.js";
import { csv } from "./csv.js";

testDoor(csv, { accepted: 0.33, ways: ["refused csv-column", "refused unreadable"] });
