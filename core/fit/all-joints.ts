/** Which joints are judged? All 58 of the trade: those in the program by their code, the others as "not checked yet". */
import { say } from "../texts/say.js";
import { driveAndBrakesJoints } from "./drive-and-brakes/index.js";
import { frontAndWheelsJoints } from "./front-and-wheels/index.js";
import { type JointDefinition, notChecked } from "./joint-definition.js";
import { JOINT_IDS, JOINT_TITLES } from "./joint-titles.js";

function notInProgram(id: (typeof JOINT_IDS)[number]): JointDefinition {
  const head = { id, title: JOINT_TITLES[id], between: [] };
  return {
    ...head,
    attributes: [],
    reads: [],
    changes: [],
    evaluate: () => notChecked(head, say("fit.all-joints.coldset-does-not-judge-this-joint")),
  };
}

const written = new Map([...frontAndWheelsJoints, ...driveAndBrakesJoints].map((joint) => [joint.id as string, joint]));

/** J1 to J58 in order. */
export const ALL_JOINTS: readonly JointDefinition[] = JOINT_IDS.map((id) => written.get(id) ?? notInProgram(id));
