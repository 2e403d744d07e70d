import { useStoreApi } from "@xyflow/react";
import { useEffect } from "react";

/** While selecting by touch, a tap adds to the selection, as if a key were held down. */
export function useMultiTap(selecting: boolean): void {
  const store = useStoreApi();
  useEffect(() => {
    store.setState({ multiSelectionActive: selecting });
  }, [selecting, store]);
}
