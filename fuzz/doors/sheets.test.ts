import { ALL_SHEETS } from "@coldset/core/sheets";
import { testDoor } from "../test-door.js";
import { sheets } from "./sheets.js";

testDoor(sheets, { accepted: 0.35, ways: ALL_SHEETS.map((sheet) => `accepted ${sheet.id}`) });
