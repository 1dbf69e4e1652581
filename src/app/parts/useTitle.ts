// The name of the place in the browser's own list of tabs and history.
import { useEffect } from 'react';

export function useTitle(title: string): void {
  useEffect(() => {
    document.title = title === '' ? 'Doffline' : `${title} – Doffline`;
  }, [title]);
}
