import Link from 'next/link';
import type { ReactNode } from 'react';
import { Notice } from '@/app/_components/notice';
import { balanceInWords } from '@/app/_format/balance-words';
import { formatDate, formatPercent, formatPercentFigure, formatTemperature } from '@/app/_format/figures';
import { formatMoisture, moistureSourceWords } from '@/app/_format/moisture';
import { containerLabel, desiccantInWords, sealInWords } from '@/app/_format/packet-words';
import { storePath } from '@/app/_format/store-path';
import { packetRoleLabel } from '@/lib/domain/stock/packet-roles';
import type { PacketPage } from '@/lib/server/queries/packet-page';

/** Where it lies, how much is in it, how alive that is, how it is packed, and what it wants. */
export function AtAGlance({ packet, today }: { packet: PacketPage; today: string }) {
  const { held, container, care, since, moisturePercent, role } = packet;
  return (
    <>
      <Place packet={packet} />
      <Wants packet={packet} today={today} />
      <dl className="sheet grid grid-cols-2 gap-px p-0! md:grid-cols-4">
        <Item label="Seed left">
          <span className="figures">{balanceInWords(held)}</span>
        </Item>
        <Item label="Alive now, by forecast">
          <Alive packet={packet} />
        </Item>
        <Item label="Kept as">{packetRoleLabel(role)}</Item>
        <Item label="Harvested">{formatDate(packet.lot.harvestedOn)}</Item>
        <Item label="Container">
          {container ? containerLabel(container) : 'not known'}
          {container && <Quiet>{sealInWords(container, care)}</Quiet>}
        </Item>
        <Item label="Moisture">
          <Moisture packet={packet} />
          <Quiet>{moisturePercent !== null && since && `since ${formatDate(since)}`}</Quiet>
        </Item>
        <Item label="Desiccant">
          {desiccantInWords(care) ?? 'none written down'}
          <Quiet>{care.desiccant?.changeDueOn && `change it by ${formatDate(care.desiccant.changeDueOn)}`}</Quiet>
        </Item>
        <Item label="There since">{since ? formatDate(since) : 'not known'}</Item>
      </dl>
      {!packet.forecast.ok && (
        <p className="max-w-prose">
          <b>No forecast</b>: {packet.forecast.reason} Its tests alone tell how it is.
        </p>
      )}
    </>
  );
}

function Place({ packet: { place } }: { packet: PacketPage }) {
  if (!place) {
    return <Notice kind="caution">Nobody wrote down where it lies. Move it to where you have found it.</Notice>;
  }
  return (
    <p className="say">
      {place.steps.map((step, index) => (
        <span key={step.id}>
          {index > 0 && ' › '}
          <Link href={storePath(step.id)} className="font-bold text-ink underline decoration-rule underline-offset-3">
            {step.name}
          </Link>
        </span>
      ))}
      <span className="quiet">, {formatTemperature(place.targetTemperatureC)}</span>
      {place.atPartnerBank && <span className="quiet">, held elsewhere</span>}
    </p>
  );
}

/** What its container wants today; what it wants later stands with the facts. */
function Wants({ packet: { careDue, seeds }, today }: { packet: PacketPage; today: string }) {
  if (!careDue || careDue.on > today || seeds === 0) return null;
  return (
    <Notice kind="caution">
      {careDue.what === 'seal'
        ? `It has stood open since ${formatDate(careDue.on)}: seal it, and write that down.`
        : `Its desiccant was to be changed by ${formatDate(careDue.on)}.`}
    </Notice>
  );
}

function Alive({ packet: { forecast } }: { packet: PacketPage }) {
  if (!forecast.ok) return <span className="font-normal">no forecast</span>;
  return (
    <>
      {formatPercent(forecast.median)}{' '}
      <span className="quiet text-base font-normal whitespace-nowrap">
        {formatPercentFigure(forecast.lower)}–{formatPercentFigure(forecast.upper)}
      </span>
      <Quiet>{`in ten years here: ${formatPercent(forecast.inTenYears)}`}</Quiet>
    </>
  );
}

/** What the forecast reckons with, and where it is from; without a forecast, what was written down. */
function Moisture({ packet: { moisturePercent, forecast } }: { packet: PacketPage }) {
  if (!forecast.ok) {
    return moisturePercent === null ? (
      'not written'
    ) : (
      <span className="figures">{formatMoisture(moisturePercent)}</span>
    );
  }
  return (
    <>
      <span className="figures">{formatMoisture(forecast.moisturePercent)}</span>
      <Quiet>{moistureSourceWords(forecast.moistureFrom)}</Quiet>
    </>
  );
}

function Item({ label, children }: { label: string; children: ReactNode }) {
  return (
    <div className="min-w-0 border-rule px-4 py-3">
      <dt className="label">{label}</dt>
      <dd className="wrap-anywhere text-lg leading-snug font-semibold">{children}</dd>
    </div>
  );
}

function Quiet({ children }: { children: ReactNode }) {
  return children ? <span className="quiet block text-sm font-normal">{children}</span> : null;
}
