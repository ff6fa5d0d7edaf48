// What it holds is made when it is first shown, and stays.
import QtQuick

Repeater {
    id: once

    required property bool shown
    property bool made: false

    function make() {
        if (once.shown)
            once.made = true;
    }

    model: made ? 1 : 0
    onShownChanged: make()
    Component.onCompleted: make()
}
