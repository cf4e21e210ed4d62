import { testDoor } from "../test-door.js";
import { documents } from "./documents.js";

testDoor(documents, {
  accepted: 0.33,
  ways: ["accepted read", "accepted reckoned", "refused yaml", "refused key-twice"],
});
