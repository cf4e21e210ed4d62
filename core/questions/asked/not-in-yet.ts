/** Which of the twenty questions can this program not answer yet? They stand on the board and say so. */
import { notIn, type Question } from "../question.js";

export const whichAdvert: Question = () =>
  notIn(
    { n: 3, question: "Which of these adverts should I drive to?", stake: "money" },
    "Comparing adverts is not in this version yet.",
  );
export const weldNearBraze: Question = () =>
  notIn(
    { n: 10, question: "Will my weld spoil the braze?", stake: "money" },
    "Heat reach is not in this version yet. Keep 15 mm from any brazed joint and ask a qualified welder.",
  );
export const mendOrReject: Question = () =>
  notIn(
    { n: 16, question: "Is this used part worth mending?", stake: "money" },
    "Mending or rejecting used parts is not in this version yet.",
  );
export const looksIntended: Question = () =>
  notIn(
    { n: 17, question: "How do I make it look intended?", stake: "money" },
    "Paint and masks are not in this version yet.",
  );
export const hoseAndCable: Question = () =>
  notIn(
    { n: 18, question: "How do I route hose and cable, and how long?", stake: "time" },
    "Routes of hose and cable are not in this version yet.",
  );
