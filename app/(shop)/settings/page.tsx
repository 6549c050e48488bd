import type { Metadata } from 'next'
import { textOf } from '#lib/schema/form'
import { defaultShopRules, ShopRules, ShopSettings } from '#lib/schema/shop'
import { readSettings } from '#lib/services/shop'
import { requireActor } from '#lib/web/session'
import { ActionForm } from '../../ui/action-form'
import { Hidden, TextArea, TextField, TickField } from '../../ui/fields'
import { addressOf } from '../../ui/page-address'
import { save } from './actions'
import { type Rule, rules } from './rules'
import { Seasons } from './seasons'
import './settings.css'

export const metadata: Metadata = { title: 'Shop settings' }

export default async function SettingsPage({ searchParams }: PageProps<'/settings'>) {
  const actor = await requireActor(addressOf('/settings', await searchParams))
  const { saved, season } = await searchParams
  const { shop, seasons, today } = await readSettings(actor, {})
  const defaults = textOf(ShopRules, defaultShopRules) as Record<string, Record<string, string>>
  const now = textOf(ShopSettings, shop) as Record<string, unknown>
  const shown = now.rules as Record<string, Record<string, string>>
  return (
    <div className="narrow">
      <h1>Shop settings</h1>
      {saved ? (
        <p className="notice done" role="status" style={{ margin: '14px 0' }}>
          Saved.
        </p>
      ) : null}
      {actor.role === 'lead' ? (
        <div style={{ marginTop: 18 }}>
          <ActionForm
            action={save}
            defaults={{ ...now, version: String(shop.version) }}
            labels={Object.fromEntries(rules.map((rule) => [rule.name, rule.label]))}
            submit="Save the settings"
          >
            <Hidden name="version" />
            <TextField name="name" label="Name of the shop" />
            <div className="field-row">
              <TextField name="timeZone" label="Time zone" hint="the shop's day is judged by it" />
              <TextField name="currency" label="Currency" hint="three letters, as EUR" />
            </div>
            <TextArea name="address" label="Address" rows={2} />
            {(['repair', 'upkeep'] as const).map((group) => (
              <fieldset key={group} className="form rule-top">
                <legend>{group === 'repair' ? 'Rules for patches' : 'Rules for release and leaks'}</legend>
                <p className="note">Defaults are common practice or from memory, and yours to change.</p>
                <div className="rules">
                  {rules
                    .filter((rule) => rule.name.startsWith(`rules.${group}.`))
                    .map((rule) => {
                      const usual = defaults[group]?.[rule.name.split('.')[2] ?? '']
                      return rule.tick ? (
                        <TickField key={rule.name} name={rule.name} label={rule.label} hint={rule.hint} />
                      ) : (
                        <TextField
                          key={rule.name}
                          name={rule.name}
                          label={rule.label}
                          {...(rule.unit ? { unit: rule.unit } : {})}
                          numeric
                          hint={`${rule.hint ? `${rule.hint}; ` : ''}default ${usual}`}
                        />
                      )
                    })}
                </div>
              </fieldset>
            ))}
          </ActionForm>
        </div>
      ) : (
        <dl className="figures" style={{ marginTop: 18 }}>
          {[
            ['Shop', shop.name],
            ['Time zone', shop.timeZone],
            ['Currency', shop.currency],
            ...rules.map((rule) => {
              const [, group = '', name = ''] = rule.name.split('.')
              return [rule.label, valueWords(shown[group]?.[name], rule)]
            }),
          ].map(([label, value]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      <Seasons
        seasons={seasons}
        lead={actor.role === 'lead'}
        changing={typeof season === 'string' ? season : null}
        today={today}
      />
    </div>
  )
}

/** A rule as it is read where it can't be changed. */
function valueWords(value: unknown, { unit, tick }: Rule): string {
  if (tick) return String(value) === 'true' ? 'yes' : 'no'
  return unit ? `${value}${unit === '°' ? '' : ' '}${unit}` : String(value ?? '')
}
