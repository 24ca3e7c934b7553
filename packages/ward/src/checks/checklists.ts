/**
 * Three checklists around an anaesthetic, in our own words after the headings of the safety checklist of the Association of
 * Veterinary Anaesthetists as a nursing journal described it in 2024. The practice's own list comes first where it has one.
 */
export const CHECKLIST_SOURCE =
  'In our own words after the safety checklist of the Association of Veterinary Anaesthetists, as the Veterinary Nursing Journal described it in 2024. A practice with a list of its own goes by that.';

export interface CheckItem {
  /** As the record keeps it. */
  readonly item: string;
  readonly words: string;
}

export const CHECK_ITEMS = {
  'before induction': [
    { item: 'patient-and-job', words: 'This patient, this limb, this operation; consent of whoever is responsible' },
    { item: 'vein', words: 'Way into a vein or bone, or why there is none' },
    { item: 'airway', words: 'Tubes and masks that fit; cuffs hold' },
    { item: 'machine', words: 'Machine looked over; vaporiser filled' },
    { item: 'oxygen', words: 'Oxygen lasts for longer than planned' },
    { item: 'circuit', words: 'Circuit does not leak; the valve is open' },
    { item: 'watcher', words: 'One named person watches the patient and does nothing else' },
    { item: 'risks', words: 'What may go wrong with this patient was said aloud' },
    { item: 'emergency', words: 'Emergency sheet on the wall, its drugs drawn up and labelled' },
    { item: 'warmth', words: 'Warmth is on before the patient lies down' },
  ],
  'before the first cut': [
    { item: 'patient-again', words: 'Patient, limb and side said again, film beside it' },
    { item: 'depth', words: 'Deep enough for the cut, says whoever watches' },
    { item: 'pain', words: 'Pain relief is in and has had its time' },
    { item: 'counts-in', words: 'Swabs, needles and pins are counted in' },
    { item: 'worries', words: 'Everybody was asked what worries them' },
  ],
  'before waking': [
    { item: 'counts-out', words: 'Counts come out even' },
    { item: 'valve-open', words: 'The valve is open and the airway free' },
    { item: 'breathing', words: 'Airway, breathing and heart looked at' },
    { item: 'temperature', words: 'Temperature read; warmth goes along' },
    { item: 'fluids', words: 'Fluids: what it had and what it still gets' },
    { item: 'pain-plan', words: 'Pain plan signed: what, how much, when next' },
    { item: 'watcher-after', words: 'One named person watches it until it is upright' },
    { item: 'worries-after', words: 'What the next shift has to know was said' },
  ],
} as const satisfies Readonly<Record<string, readonly CheckItem[]>>;
