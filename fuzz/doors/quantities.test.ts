import { testDoor } from "../test-door.js";
import { quantities } from "./quantities.js";

testDoor(quantities, { accepted: 0.4, ways: ["accepted length", "refused unknown-unit", "refused trailing-text"] });
