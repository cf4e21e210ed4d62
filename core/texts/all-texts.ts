/** Every text of Coldset in one table: key, and the words with {names} for what is filled in. */
import { askedTexts } from "./asked.js";
import { cliTexts } from "./cli.js";
import { drawingTexts } from "./drawing.js";
import { driveTexts } from "./drive.js";
import { fitTexts } from "./fit.js";
import { fitDriveTexts } from "./fit-drive.js";
import { fitFrontTexts } from "./fit-front.js";
import { geometryTexts } from "./geometry.js";
import { mechanicsTexts } from "./mechanics.js";
import { planTexts } from "./plan.js";
import { positionTexts } from "./position.js";
import { quantityTexts } from "./quantity.js";
import { questionsTexts } from "./questions.js";
import { safetyTexts } from "./safety.js";
import { serverTexts } from "./server.js";
import { sheetTexts } from "./sheet.js";
import { sheetsTexts } from "./sheets.js";
import { storeTexts } from "./store.js";
import { surveyTexts } from "./survey.js";
import { webTexts } from "./web.js";
import { workshopTexts } from "./workshop.js";

export const ALL_TEXTS = {
  ...askedTexts,
  ...cliTexts,
  ...drawingTexts,
  ...driveTexts,
  ...fitTexts,
  ...fitDriveTexts,
  ...fitFrontTexts,
  ...geometryTexts,
  ...mechanicsTexts,
  ...planTexts,
  ...positionTexts,
  ...quantityTexts,
  ...questionsTexts,
  ...safetyTexts,
  ...serverTexts,
  ...sheetTexts,
  ...sheetsTexts,
  ...storeTexts,
  ...surveyTexts,
  ...webTexts,
  ...workshopTexts,
} as const;
