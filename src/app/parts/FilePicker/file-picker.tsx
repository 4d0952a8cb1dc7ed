interface FilePickerProps {
  readonly class: string;
  readonly label: string;
  readonly onAdd: (files: readonly File[]) => void;
  /** Called when it is pressed, before anything is chosen. */
  readonly onOpen?: () => void;
  readonly several?: boolean;
  readonly camera?: boolean;
  /** Kinds of file. Default: photos. */
  readonly accept?: string;
  readonly children: preact.ComponentChildren;
}

/** Something to press that opens the camera or the file picker. */
export function FilePicker({
  class: look,
  label,
  onAdd,
  onOpen,
  several = false,
  camera = false,
  accept = 'image/*',
  children,
}: FilePickerProps) {
  return (
    <label class={look}>
      {children}
      <input
        type="file"
        class="unseen"
        accept={accept}
        aria-label={label}
        multiple={several}
        {...(onOpen ? { onClick: onOpen } : {})}
        {...(camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          // Emptied, so that choosing the same file again is a change.
          event.currentTarget.value = '';
          onAdd(files);
        }}
      />
    </label>
  );
}
