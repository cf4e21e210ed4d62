import { testDoor } from "../test-door.js";
import { cli } from "./cli.js";

testDoor(cli, { accepted: 0.2, ways: ["accepted sheet 0", "accepted --help 0", "refused check"] });
