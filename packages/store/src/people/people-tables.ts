/** The tables of people as kysely sees them. Truth values are 0 and 1, times ISO text. */
import type { Role } from '@bonewright/casebook';

export interface PeopleTables {
  people: {
    id: string;
    name: string;
    /** The name as it is compared. */
    name_key: string;
    role: Role;
    is_owner: number;
    is_active: number;
    /** A JSON list of case ids; null: all. */
    cases: string | null;
    password: string | null;
    temporary_until: string | null;
    made_at: string;
  };
  sessions: {
    id: string;
    token_hash: string;
    person_id: string;
    link_id: string | null;
    started_at: string;
    seen_at: string;
    expires_at: string;
    address: string;
    device: string;
  };
  links: {
    id: string;
    token_hash: string;
    person_id: string;
    made_at: string;
    made_by: string;
    expires_at: string;
    taken_back_at: string | null;
  };
  /** Tries to sign in that failed, by name and by address. */
  tries: { key: string; failures: number; last_at: string };
  access_log: { id: string; at: string; who: string; what: string; about: string; address: string };
}
