/** What lies where in a data folder. */
export const RECORDS = 'records.sqlite';
export const ATTACHMENTS = 'attachments';
