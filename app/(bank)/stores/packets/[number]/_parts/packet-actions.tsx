import {
  ArrowUpFromLine,
  Combine,
  Droplets,
  Lock,
  type LucideIcon,
  MoveRight,
  PackageOpen,
  Printer,
  Split,
  Tag,
} from 'lucide-react';
import Link from 'next/link';
import { packetPath } from '@/app/_format/store-path';
import { isHermetic } from '@/lib/domain/stock/containers';
import type { PacketPage } from '@/lib/server/queries/packet-page';

/** What may be done with the packet in hand: buttons for a thumb. What makes no sense with it is left out. */
export function PacketActions({ packet }: { packet: PacketPage }) {
  const { number, seeds, container } = packet;
  const to = (what: string) => `${packetPath(number)}/${what}`;
  const filled = seeds > 0;
  const sealable = container !== null && isHermetic(container);
  const actions: { label: string; href: string; icon: LucideIcon; shown: boolean; main?: true }[] = [
    { label: 'Take seed out', href: to('take'), icon: ArrowUpFromLine, shown: filled, main: true },
    { label: 'Move', href: to('move'), icon: MoveRight, shown: true },
    { label: 'Split', href: to('split'), icon: Split, shown: seeds > 1 },
    { label: 'Repack', href: to('repack'), icon: PackageOpen, shown: filled && container !== null },
    { label: 'Merge', href: to('merge'), icon: Combine, shown: filled },
    { label: 'Seal or open', href: to('seal'), icon: Lock, shown: filled && sealable },
    { label: 'Change desiccant', href: to('desiccant'), icon: Droplets, shown: filled },
    { label: 'Change purpose', href: to('purpose'), icon: Tag, shown: true },
    { label: 'Print label', href: `/stores/labels?packets=${encodeURIComponent(number)}`, icon: Printer, shown: true },
  ];
  return (
    <nav aria-label={`What to do with packet ${number}`} className="no-print">
      <ul className="grid grid-cols-2 gap-2 sm:grid-cols-3 lg:grid-cols-5">
        {actions
          .filter(({ shown }) => shown)
          .map(({ label, href, icon: Icon, main }) => (
            <li key={label}>
              <Link href={href} className={`button min-h-14! w-full px-3! whitespace-normal! ${main ? 'main' : ''}`}>
                <Icon aria-hidden size={20} className="shrink-0" />
                {label}
              </Link>
            </li>
          ))}
      </ul>
    </nav>
  );
}
