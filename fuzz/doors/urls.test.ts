import { testDoor } from "../test-door.js";
import { urls } from "./urls.js";

testDoor(urls, {
  accepted: 0.34,
  ways: ["accepted measure", "accepted question", "accepted asked 200", "refused asked 404"],
});
