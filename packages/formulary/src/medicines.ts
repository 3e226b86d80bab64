import acetylcysteine from "./medicines/acetylcysteine.json" with { type: "json" };
import aciclovir from "./medicines/aciclovir.json" with { type: "json" };
import activatedCharcoal from "./medicines/activated-charcoal.json" with { type: "json" };
import adenosine from "./medicines/adenosine.json" with { type: "json" };
import adrenaline from "./medicines/adrenaline.json" with { type: "json" };
import albumin5 from "./medicines/albumin-5.json" with { type: "json" };
import albumin20 from "./medicines/albumin-20.json" with { type: "json" };
import alprostadil from "./medicines/alprostadil.json" with { type: "json" };
import amikacin from "./medicines/amikacin.json" with { type: "json" };
import aminophylline from "./medicines/aminophylline.json" with { type: "json" };
import amiodarone from "./medicines/amiodarone.json" with { type: "json" };
import amoxicillin from "./medicines/amoxicillin.json" with { type: "json" };
import ampicillin from "./medicines/ampicillin.json" with { type: "json" };
import artesunate from "./medicines/artesunate.json" with { type: "json" };
import atracurium from "./medicines/atracurium.json" with { type: "json" };
import atropine from "./medicines/atropine.json" with { type: "json" };
import azithromycin from "./medicines/azithromycin.json" with { type: "json" };
import balancedCrystalloid from "./medicines/balanced-crystalloid.json" with { type: "json" };
import benzylpenicillin from "./medicines/benzylpenicillin.json" with { type: "json" };
import calciumChloride from "./medicines/calcium-chloride.json" with { type: "json" };
import calciumGluconate from "./medicines/calcium-gluconate.json" with { type: "json" };
import cardioversion from "./medicines/cardioversion.json" with { type: "json" };
import cefotaxime from "./medicines/cefotaxime.json" with { type: "json" };
import ceftriaxone from "./medicines/ceftriaxone.json" with { type: "json" };
import cetirizine from "./medicines/cetirizine.json" with { type: "json" };
import chloramphenicol from "./medicines/chloramphenicol.json" with { type: "json" };
import chlorphenamine from "./medicines/chlorphenamine.json" with { type: "json" };
import ciprofloxacin from "./medicines/ciprofloxacin.json" with { type: "json" };
import clindamycin from "./medicines/clindamycin.json" with { type: "json" };
import cryoprecipitate from "./medicines/cryoprecipitate.json" with { type: "json" };
import dantrolene from "./medicines/dantrolene.json" with { type: "json" };
import defibrillation from "./medicines/defibrillation.json" with { type: "json" };
import desferrioxamine from "./medicines/desferrioxamine.json" with { type: "json" };
import dexamethasone from "./medicines/dexamethasone.json" with { type: "json" };
import dexmedetomidine from "./medicines/dexmedetomidine.json" with { type: "json" };
import diazepam from "./medicines/diazepam.json" with { type: "json" };
import digoxinAntibody from "./medicines/digoxin-antibody.json" with { type: "json" };
import dobutamine from "./medicines/dobutamine.json" with { type: "json" };
import dopamine from "./medicines/dopamine.json" with { type: "json" };
import esmolol from "./medicines/esmolol.json" with { type: "json" };
import etomidate from "./medicines/etomidate.json" with { type: "json" };
import fentanyl from "./medicines/fentanyl.json" with { type: "json" };
import fibrinogen from "./medicines/fibrinogen.json" with { type: "json" };
import flecainide from "./medicines/flecainide.json" with { type: "json" };
import flucloxacillin from "./medicines/flucloxacillin.json" with { type: "json" };
import fluconazole from "./medicines/fluconazole.json" with { type: "json" };
import flumazenil from "./medicines/flumazenil.json" with { type: "json" };
import fomepizole from "./medicines/fomepizole.json" with { type: "json" };
import fosphenytoin from "./medicines/fosphenytoin.json" with { type: "json" };
import furosemide from "./medicines/furosemide.json" with { type: "json" };
import gentamicin from "./medicines/gentamicin.json" with { type: "json" };
import glucagon from "./medicines/glucagon.json" with { type: "json" };
import glucose10 from "./medicines/glucose-10.json" with { type: "json" };
import glycerylTrinitrate from "./medicines/glyceryl-trinitrate.json" with { type: "json" };
import glycopyrronium from "./medicines/glycopyrronium.json" with { type: "json" };
import heparin from "./medicines/heparin.json" with { type: "json" };
import hydralazine from "./medicines/hydralazine.json" with { type: "json" };
import hydrocortisone from "./medicines/hydrocortisone.json" with { type: "json" };
import hydroxocobalamin from "./medicines/hydroxocobalamin.json" with { type: "json" };
import ibuprofen from "./medicines/ibuprofen.json" with { type: "json" };
import insulin from "./medicines/insulin.json" with { type: "json" };
import ipratropium from "./medicines/ipratropium.json" with { type: "json" };
import isoprenaline from "./medicines/isoprenaline.json" with { type: "json" };
import ketamine from "./medicines/ketamine.json" with { type: "json" };
import labetalol from "./medicines/labetalol.json" with { type: "json" };
import levetiracetam from "./medicines/levetiracetam.json" with { type: "json" };
import lidocaine from "./medicines/lidocaine.json" with { type: "json" };
import lipidEmulsion from "./medicines/lipid-emulsion.json" with { type: "json" };
import lorazepam from "./medicines/lorazepam.json" with { type: "json" };
import magnesiumSulfate from "./medicines/magnesium-sulfate.json" with { type: "json" };
import maintenanceFluid from "./medicines/maintenance-fluid.json" with { type: "json" };
import maintenanceNewborn from "./medicines/maintenance-newborn.json" with { type: "json" };
import mannitol from "./medicines/mannitol.json" with { type: "json" };
import meropenem from "./medicines/meropenem.json" with { type: "json" };
import metaraminol from "./medicines/metaraminol.json" with { type: "json" };
import methylthioninium from "./medicines/methylthioninium.json" with { type: "json" };
import metronidazole from "./medicines/metronidazole.json" with { type: "json" };
import midazolam from "./medicines/midazolam.json" with { type: "json" };
import milrinone from "./medicines/milrinone.json" with { type: "json" };
import morphine from "./medicines/morphine.json" with { type: "json" };
import naloxone from "./medicines/naloxone.json" with { type: "json" };
import neostigmine from "./medicines/neostigmine.json" with { type: "json" };
import noradrenaline from "./medicines/noradrenaline.json" with { type: "json" };
import octreotide from "./medicines/octreotide.json" with { type: "json" };
import ondansetron from "./medicines/ondansetron.json" with { type: "json" };
import oralRehydration from "./medicines/oral-rehydration.json" with { type: "json" };
import paracetamol from "./medicines/paracetamol.json" with { type: "json" };
import paraldehyde from "./medicines/paraldehyde.json" with { type: "json" };
import phenobarbital from "./medicines/phenobarbital.json" with { type: "json" };
import phenylephrine from "./medicines/phenylephrine.json" with { type: "json" };
import phenytoin from "./medicines/phenytoin.json" with { type: "json" };
import phosphate from "./medicines/phosphate.json" with { type: "json" };
import piperacillinTazobactam from "./medicines/piperacillin-tazobactam.json" with { type: "json" };
import plasma from "./medicines/plasma.json" with { type: "json" };
import platelets from "./medicines/platelets.json" with { type: "json" };
import potassiumChloride from "./medicines/potassium-chloride.json" with { type: "json" };
import pralidoxime from "./medicines/pralidoxime.json" with { type: "json" };
import prednisolone from "./medicines/prednisolone.json" with { type: "json" };
import procainamide from "./medicines/procainamide.json" with { type: "json" };
import propofol from "./medicines/propofol.json" with { type: "json" };
import protamine from "./medicines/protamine.json" with { type: "json" };
import prothrombinComplex from "./medicines/prothrombin-complex.json" with { type: "json" };
import pyridoxine from "./medicines/pyridoxine.json" with { type: "json" };
import quinine from "./medicines/quinine.json" with { type: "json" };
import redCells from "./medicines/red-cells.json" with { type: "json" };
import rocuronium from "./medicines/rocuronium.json" with { type: "json" };
import salbutamol from "./medicines/salbutamol.json" with { type: "json" };
import sodiumBicarbonate from "./medicines/sodium-bicarbonate.json" with { type: "json" };
import sodiumChloride09 from "./medicines/sodium-chloride-0-9.json" with { type: "json" };
import sodiumChloride27 from "./medicines/sodium-chloride-2-7.json" with { type: "json" };
import sodiumChloride3 from "./medicines/sodium-chloride-3.json" with { type: "json" };
import sodiumChloride5 from "./medicines/sodium-chloride-5.json" with { type: "json" };
import sodiumNitroprusside from "./medicines/sodium-nitroprusside.json" with { type: "json" };
import sodiumThiosulfate from "./medicines/sodium-thiosulfate.json" with { type: "json" };
import sugammadex from "./medicines/sugammadex.json" with { type: "json" };
import suxamethonium from "./medicines/suxamethonium.json" with { type: "json" };
import thiopental from "./medicines/thiopental.json" with { type: "json" };
import tranexamicAcid from "./medicines/tranexamic-acid.json" with { type: "json" };
import valproate from "./medicines/valproate.json" with { type: "json" };
import vancomycin from "./medicines/vancomycin.json" with { type: "json" };
import vasopressin from "./medicines/vasopressin.json" with { type: "json" };
import vecuronium from "./medicines/vecuronium.json" with { type: "json" };
import verapamil from "./medicines/verapamil.json" with { type: "json" };
import vitaminK from "./medicines/vitamin-k.json" with { type: "json" };
import wholeBlood from "./medicines/whole-blood.json" with { type: "json" };

/** The medicine files as they stand on disk, in the order a resuscitation reaches for them. */
export const medicineFiles: readonly unknown[] = [
  adrenaline,
  hydrocortisone,
  chlorphenamine,
  cetirizine,
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
  salbutamol,
  ipratropium,
  aminophylline,
  prednisolone,
  dexamethasone,
  ketamine,
  propofol,
  thiopental,
  etomidate,
  fentanyl,
  morphine,
  rocuronium,
  vecuronium,
  atracurium,
  suxamethonium,
  sugammadex,
  neostigmine,
  glycopyrronium,
  midazolam,
  dexmedetomidine,
  paracetamol,
  ibuprofen,
  ondansetron,
  lorazepam,
  diazepam,
  levetiracetam,
  phenytoin,
  fosphenytoin,
  valproate,
  phenobarbital,
  pyridoxine,
  paraldehyde,
  balancedCrystalloid,
  glucose10,
  ceftriaxone,
  tranexamicAcid,
  noradrenaline,
  dopamine,
  dobutamine,
  milrinone,
  vasopressin,
  isoprenaline,
  alprostadil,
  phenylephrine,
  metaraminol,
  glycerylTrinitrate,
  sodiumNitroprusside,
  labetalol,
  hydralazine,
  sodiumChloride09,
  albumin5,
  albumin20,
  maintenanceFluid,
  maintenanceNewborn,
  furosemide,
  mannitol,
  sodiumChloride3,
  sodiumChloride27,
  sodiumChloride5,
  redCells,
  wholeBlood,
  plasma,
  platelets,
  cryoprecipitate,
  vitaminK,
  protamine,
  heparin,
  cefotaxime,
  benzylpenicillin,
  ampicillin,
  amoxicillin,
  gentamicin,
  amikacin,
  meropenem,
  piperacillinTazobactam,
  vancomycin,
  clindamycin,
  metronidazole,
  flucloxacillin,
  aciclovir,
  fluconazole,
  artesunate,
  quinine,
  insulin,
  glucagon,
  potassiumChloride,
  phosphate,
  naloxone,
  flumazenil,
  acetylcysteine,
  activatedCharcoal,
  pralidoxime,
  methylthioninium,
  hydroxocobalamin,
  desferrioxamine,
  dantrolene,
  lipidEmulsion,
  digoxinAntibody,
  fomepizole,
  oralRehydration,
  octreotide,
  prothrombinComplex,
  fibrinogen,
  chloramphenicol,
  azithromycin,
  ciprofloxacin,
  sodiumThiosulfate,
];
