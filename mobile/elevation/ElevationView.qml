// A run drawn to scale, with one object for each part in view that a screen reader finds.
import QtQuick
import Kneerail.Ui

ElevationItem {
    id: view

    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("drawing of the run, arrow keys go from part to part")

    PartNames {
        x: view.contentX
        y: view.contentY
        parts: view.visibleParts
        onPressed: (part) => view.partTouched(part)
    }
}
