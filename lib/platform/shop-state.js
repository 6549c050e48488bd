// @ts-check

/** @typedef {{ shop: 'none' | 'demo' | 'own', people: number }} ShopState */

/**
 * What a migrated database holds.
 * @param {import('./connection.js').Sql} sql
 * @returns {Promise<ShopState>}
 */
export async function shopState(sql) {
  const [row] = await sql`
    select (select is_demo from shop limit 1) as demo, (select count(*)::int from person) as people`
  const demo = row?.demo ?? null
  return { shop: demo === null ? 'none' : demo ? 'demo' : 'own', people: row?.people ?? 0 }
}
