/** Tells the other pages of this browser that something was kept or sent. */
type Listener = (caseId: string) => void;

const channel = new BroadcastChannel('bonewright');

export function tellOtherPages(caseId: string): void {
  channel.postMessage(caseId);
}

export function onOtherPages(listener: Listener): void {
  channel.addEventListener('message', ({ data }) => {
    if (typeof data === 'string') listener(data);
  });
}
