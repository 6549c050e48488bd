import type postgres from 'postgres'

/**
 * Small functions for the time of one session, with which the seed draws in SQL: the same key gives the same draw on
 * every machine.
 */
export async function makeDraws(sql: postgres.TransactionSql): Promise<void> {
  await sql.unsafe(`
    -- A whole number from 0 to n - 1.
    create function pg_temp.draw(key text, n int) returns int language sql immutable parallel safe as $$
      select (('x' || substr(md5(key), 1, 7))::bit(28)::int % n)
    $$;
    -- An id shaped like a random uuid.
    create function pg_temp.id_of(key text) returns uuid language sql immutable parallel safe as $$
      select overlay(overlay(md5('seed/' || key) placing '4' from 13) placing 'a' from 17)::uuid
    $$;
    create function pg_temp.pick(key text, words text[]) returns text language sql immutable parallel safe as $$
      select words[1 + pg_temp.draw(key, cardinality(words))]
    $$;`)
}
