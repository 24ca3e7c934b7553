/** Takes the place from the device. Browsers give it only to a page that came over a secure connection. */
import { useState } from 'react';

interface DevicePlaceProps {
  readonly onPlace: (latitude: string, longitude: string) => void;
}

/** About a metre: the device knows no better. */
const DECIMALS = 5;
const LONGEST_MS = 20_000;

const WHY: Readonly<Record<number, string>> = {
  1: 'This device was not allowed to say where it is. Type a grid reference or degrees.',
  2: 'This device does not know where it is. Type a grid reference or degrees.',
  3: 'This device found no position in 20 seconds. Outdoors it may.',
};

export function DevicePlace({ onPlace }: DevicePlaceProps) {
  const [said, setSaid] = useState<string | null>(null);
  if (!window.isSecureContext || !('geolocation' in navigator))
    return (
      <p className="caption">
        This page came over a plain connection, and so the device keeps its position to itself. Type a grid reference or
        degrees, or open the page on this machine itself or over https.
      </p>
    );
  const take = () => {
    setSaid('Asking the device.');
    navigator.geolocation.getCurrentPosition(
      ({ coords: { latitude, longitude, accuracy } }) => {
        onPlace(latitude.toFixed(DECIMALS), longitude.toFixed(DECIMALS));
        setSaid(
          `Taken from this device, good to ${Math.round(accuracy)} m. Only right if you stand where it was found.`,
        );
      },
      ({ code }) => setSaid(WHY[code] ?? null),
      { enableHighAccuracy: true, timeout: LONGEST_MS },
    );
  };
  return (
    <div className="device-place">
      <button type="button" className="button" onClick={take}>
        Take the place from this device
      </button>
      <span className="caption" role="status">
        {said}
      </span>
    </div>
  );
}
