// One light object for each part in view, for screen readers.
import QtQuick
import Kneerail.Ui

Item {
    id: names

    required property VisibleParts parts

    signal pressed(int part)

    Repeater {
        model: names.parts

        PartName {
            onPressed: (part) => names.pressed(part)
        }
    }
}
