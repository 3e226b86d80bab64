import adenosine from "./medicines/adenosine.json" with { type: "json" };
import adrenaline from "./medicines/adrenaline.json" with { type: "json" };
import amiodarone from "./medicines/amiodarone.json" with { type: "json" };
import atropine from "./medicines/atropine.json" with { type: "json" };
import balancedCrystalloid from "./medicines/balanced-crystalloid.json" with { type: "json" };
import calciumChloride from "./medicines/calcium-chloride.json" with { type: "json" };
import calciumGluconate from "./medicines/calcium-gluconate.json" with { type: "json" };
import cardioversion from "./medicines/cardioversion.json" with { type: "json" };
import ceftriaxone from "./medicines/ceftriaxone.json" with { type: "json" };
import defibrillation from "./medicines/defibrillation.json" with { type: "json" };
import esmolol from "./medicines/esmolol.json" with { type: "json" };
import flecainide from "./medicines/flecainide.json" with { type: "json" };
import glucose10 from "./medicines/glucose-10.json" with { type: "json" };
import ketamine from "./medicines/ketamine.json" with { type: "json" };
import lidocaine from "./medicines/lidocaine.json" with { type: "json" };
import lorazepam from "./medicines/lorazepam.json" with { type: "json" };
import magnesiumSulfate from "./medicines/magnesium-sulfate.json" with { type: "json" };
import midazolam from "./medicines/midazolam.json" with { type: "json" };
import procainamide from "./medicines/procainamide.json" with { type: "json" };
import rocuronium from "./medicines/rocuronium.json" with { type: "json" };
import sodiumBicarbonate from "./medicines/sodium-bicarbonate.json" with { type: "json" };
import suxamethonium from "./medicines/suxamethonium.json" with { type: "json" };
import tranexamicAcid from "./medicines/tranexamic-acid.json" with { type: "json" };
import verapamil from "./medicines/verapamil.json" with { type: "json" };

/** The medicine files as they stand on disk, in the order a resuscitation reaches for them. */
export const medicineFiles: readonly unknown[] = [
  adrenaline,
  defibrillation,
  amiodarone,
  lidocaine,
  adenosine,
  procainamide,
  flecainide,
  verapamil,
  esmolol,
  cardioversion,
  atropine,
  sodiumBicarbonate,
  calciumChloride,
  calciumGluconate,
  magnesiumSulfate,
  ketamine,
  rocuronium,
  suxamethonium,
  midazolam,
  lorazepam,
  balancedCrystalloid,
  glucose10,
  ceftriaxone,
  tranexamicAcid,
];
