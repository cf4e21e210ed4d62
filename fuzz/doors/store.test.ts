import { testDoor } from "../test-door.js";
import { store } from "./store.js";

testDoor(store, { accepted: 0.3, ways: ["accepted 1 documents", "refused yaml"] });
