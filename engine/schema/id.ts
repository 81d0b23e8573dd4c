// What an id may look like: letters, digits and a few signs, so that ids can be joined without mistake.

/** Of sheets, columns and checks. */
export const ID = /^[A-Za-z0-9][A-Za-z0-9_-]{0,79}$/;

/** Of rows, those among them that are made of the ids of others. */
export const ROW_ID = /^[A-Za-z0-9(][A-Za-z0-9_.:~()-]{0,999}$/;
