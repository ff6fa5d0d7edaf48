// What it holds is made when it is first shown, and stays; it is seen while it is shown.
import QtQuick

Repeater {
    id: once

    required property bool shown
    property bool made: false
    /// Null before it is made.
    property Item item: null

    function make() {
        if (once.shown)
            once.made = true;
    }

    model: made ? 1 : 0
    onShownChanged: make()
    onItemAdded: (index, item) => {
        item.visible = Qt.binding(() => once.shown);
        once.item = item;
    }
    Component.onCompleted: make()
}
