import { testDoor } from "../test-door.js";
import { api } from "./api.js";

testDoor(api, { accepted: 0.2, ways: ["accepted GET", "accepted POST", "refused 404", "refused 422", "refused 400"] });
