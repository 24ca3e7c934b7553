/** Where the doses were read; of most only an abstract or a page's opening was seen. */
import type { Source } from '../../entry.ts';

export const FORMULARY_HEDGEHOG: Source = {
  title: 'BSAVA Small Animal Formulary, British wildlife tables, hedgehogs',
};
export const FORMULARY_SQUIRREL: Source = {
  title: 'BSAVA Small Animal Formulary, British wildlife tables, red squirrels',
};
export const FORMULARY_SEDATION: Source = {
  title: 'BSAVA Small Animal Formulary, sedation and immobilisation protocols for exotic pets',
};
export const FORMULARY_SEDATION_OLDER: Source = { ...FORMULARY_SEDATION, place: 'an older page' };
export const ARNEMO: Source = {
  title: 'Arnemo & Soli, chemical immobilization of free-ranging European hedgehogs',
  year: 1995,
  place: 'J Zoo Wildl Med 26:246',
};
export const BELLINI: Source = {
  title: 'Bellini et al., alfaxalone and dexmedetomidine in European hedgehogs',
  year: 2019,
  place: 'Vet Rec 185:145',
};
export const DOSS: Source = {
  title: 'Doss & Mans, subcutaneous buprenorphine in African pygmy hedgehogs',
  year: 2020,
  place: 'JAVMA 257:618',
};
export const BUPRENORPHINE_PK: Source = {
  title: 'buprenorphine deep subcutaneously in four-toed hedgehogs',
  place: 'abstract',
};
export const METHADONE_HEDGEHOG: Source = {
  title: 'methadone subcutaneously in four-toed hedgehogs',
  place: 'abstract',
};
export const HYDROMORPHONE_HEDGEHOG: Source = {
  title: 'hydromorphone subcutaneously in four-toed hedgehogs',
  place: 'abstract',
};
export const DELK: Source = {
  title: 'Delk et al., meloxicam orally for 29 days in rabbits',
  year: 2014,
  place: 'AJVR 75:195',
};
export const NIELD: Source = {
  title: 'Nield & Govendir, meloxicam 0.2 against 1.0 mg/kg in rabbits',
  year: 2019,
  place: 'Vet Evidence 4(2)',
  doi: '10.18849/ve.v4i2.215',
};
export const RABBIT_TRIAL: Source = {
  title: 'buprenorphine and meloxicam in New Zealand White rabbits',
  year: 2013,
  place: 'JAALAS 52:571',
};
export const SMALL_MAMMAL_PROCEEDINGS: Source = {
  title: 'Orthopedic surgery in small mammals',
  place: 'conference proceedings',
};
export const OLDER_ANAESTHESIA_TEXT: Source = { title: 'Induction and maintenance of anesthesia', year: 2011 };
export const BARRON: Source = {
  title: 'Barron, appendix II in Hernandez et al., Medical Management of Wildlife Species',
  year: 2020,
  doi: '10.1002/9781119036708.app2',
};
export const PETTY: Source = { title: 'Petty, reduce pain in ferrets, mice, rabbits, rats' };
export const EMERGENCY_TABLE: Source = {
  title: 'small mammal emergency drugs, textbook chapter reproduced online',
  place: 'table 8.1',
};
export const RABBIT_ANTIBIOTICS: Source = {
  title: 'veterinary education page, antibiotics in small herbivores',
};
export const ESHAR: Source = {
  title: 'Eshar & Beaufrère, injectable anaesthesia in palm squirrels',
  year: 2019,
  place: 'AJVR 80:1082',
};
export const JOUBERT: Source = {
  title: 'Joubert et al., immobilisation of Cape ground squirrels',
  year: 2011,
  place: 'J S Afr Vet Assoc 82(2)',
};
export const SHILO: Source = {
  title: 'Shilo et al., red fox immobilisation',
  year: 2010,
  place: 'J Zoo Wildl Med 41:28',
};
export const BERTELSEN: Source = { title: 'Bertelsen & Villadsen, four medetomidine protocols in red foxes' };
export const HUNGARIAN_FOX: Source = { title: 'dexmedetomidine-midazolam-butorphanol in red foxes, Hungary' };
export const AGUIRRE: Source = {
  title: 'Aguirre et al., medetomidine-ketamine in arctic fox cubs',
  year: 2000,
  place: 'J Zoo Wildl Med 31:244',
};
export const BIRD_FRACTURES: Source = {
  title: 'Veterinary Practice magazine, fracture management in wild birds 1',
  year: 2020,
};
export const AVIAN_ANALGESIA: Source = {
  title: 'WSAVA congress proceedings, avian analgesia',
  year: 2017,
  place: 'p. 342',
};
export const KESTREL: Source = {
  title: 'Sanchez-Migallon Guzman et al., butorphanol in American kestrels',
  place: 'AJVR 75:11',
};
export const BARRED_OWL: Source = {
  title: 'Lex et al., meloxicam in barred owls',
  year: 2024,
  place: 'Animals 14(21):3086',
};
export const BIRD_TABLE: Source = { title: 'textbook chapter on birds, reproduced online', place: 'table 5-1' };
export const AVIAN_DRUGS: Source = { title: 'Werther, avian drug table in Fowler', year: 2001 };
export const STUDENT_NOTES: Source = { title: 'student notes on avian medicine', place: 'weak' };
export const CHICKEN_LIDOCAINE: Source = {
  title: 'Imani et al., intravenous lidocaine overdose in chickens',
  year: 2013,
  place: 'IJVS 8',
};
export const RESUSCITATION: Source = {
  title: 'Merck Veterinary Manual, drugs for cardiopulmonary resuscitation',
  year: 2024,
};
export const RESUSCITATION_OLDER: Source = {
  title: 'MSD Veterinary Manual, drugs for cardiopulmonary resuscitation, older table',
};
export const RESUSCITATION_UPDATE: Source = { title: 'Allukian, 2024 CPR guideline updates', year: 2025 };
export const EXOTIC_EXCERPT: Source = { title: 'exotic animal formulary', place: 'excerpt' };
/** Nobody has looked it up yet. */
export const RECALLED: Source = { title: 'recalled from formularies, not looked up' };
