import { useEffect, useState } from 'react';

interface Props {
  picture: Blob;
  /** what it shows: 'dish 2, Wed 25 Nov' */
  of: string;
}

/** A photograph that is still on this phone, small. */
export function PhotoWaiting({ picture, of }: Props) {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(picture);
    setAddress(made);
    // Or the browser would hold the picture in memory as long as the page is open.
    return () => URL.revokeObjectURL(made);
  }, [picture]);
  return (
    <div className="flex flex-wrap items-end gap-x-3 gap-y-1">
      {address ? (
        // biome-ignore lint/performance/noImgElement: it lies in this phone's memory, where no server can shrink it.
        <img src={address} alt={of} className="size-24 rounded-paper border border-rule bg-sunk object-cover" />
      ) : (
        <span className="size-24" />
      )}
      <span className="mark mark-test py-0! text-xs!">waiting to be sent</span>
    </div>
  );
}
