import { Drawer, Modal } from "@mantine/core";
import { useMediaQuery } from "@mantine/hooks";
import { narrow } from "../show/screen.ts";
import { useReturnFocus } from "../show/use-return-focus.ts";
import "./panel.css";

interface Props {
  readonly title: string;
  /** What the closing cross is called. */
  readonly closeWords: string;
  readonly onClose: () => void;
  readonly children: React.ReactNode;
}

/** A working at the side of the page; on a phone it takes the whole screen. There only while it is open. */
export function SidePanel({ title, closeWords, onClose, children }: Props) {
  useReturnFocus();
  const isNarrow = useMediaQuery(narrow) ?? false;
  return (
    <Drawer.Root opened onClose={onClose} position="right" size={isNarrow ? "100%" : 460} lockScroll={false}>
      <Drawer.Overlay backgroundOpacity={0.28} />
      <Drawer.Content>
        <Drawer.Body>
          <div className="panel-head">
            <Drawer.Title>{title}</Drawer.Title>
            <Drawer.CloseButton aria-label={closeWords} size="lg" />
          </div>
          {children}
        </Drawer.Body>
      </Drawer.Content>
    </Drawer.Root>
  );
}

/** A question or a list in the middle of the page. There only while it is open. */
export function Dialog({ title, closeWords, onClose, children }: Props) {
  useReturnFocus();
  return (
    <Modal.Root opened onClose={onClose} size={560} lockScroll={false}>
      <Modal.Overlay backgroundOpacity={0.28} />
      <Modal.Content>
        <Modal.Body>
          <div className="panel-head">
            <Modal.Title>{title}</Modal.Title>
            <Modal.CloseButton aria-label={closeWords} size="lg" />
          </div>
          {children}
        </Modal.Body>
      </Modal.Content>
    </Modal.Root>
  );
}
