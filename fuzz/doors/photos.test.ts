import { testDoor } from "../test-door.js";
import { photos } from "./photos.js";

testDoor(photos, {
  accepted: 0.34,
  ways: ["accepted image/jpeg", "accepted image/png", "accepted image/webp", "refused photo-broken"],
});
