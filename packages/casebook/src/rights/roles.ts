/** Who works on the records. A person has one role; beside it, an owner manages people. */
export const ROLES = ['surgeon', 'nurse', 'carer', 'records keeper'] as const;
export type Role = (typeof ROLES)[number];

/** Whoever asks for something, signed in or at this machine. */
export interface Subject {
  /** As it stands in the record; null at this machine while there are no accounts: the signer is then typed. */
  readonly name: string | null;
  readonly role: Role;
  readonly isOwner: boolean;
  /** The cases this person may open; null: all of them. */
  readonly cases: readonly string[] | null;
  /** Signed in with a password that was handed over: nothing is open but choosing an own one. */
  readonly mustChoosePassword: boolean;
}

/** This machine while nobody has an account: whoever sits here owns it. */
export const THIS_MACHINE: Subject = {
  name: null,
  role: 'surgeon',
  isOwner: true,
  cases: null,
  mustChoosePassword: false,
};
