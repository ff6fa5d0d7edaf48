// A thin bar of dashes, upright or lying.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: bar

    property bool lying: false
    readonly property real step: Tokens.gap * 2

    clip: true

    Repeater {
        model: Math.max(0, Math.ceil((bar.lying ? bar.width : bar.height) / bar.step))

        Rectangle {
            required property int index

            x: bar.lying ? index * bar.step : 0
            y: bar.lying ? 0 : index * bar.step
            width: bar.lying ? Tokens.gap * 1.3 : bar.width
            height: bar.lying ? bar.height : Tokens.gap * 1.3
            color: Tokens.edge
        }
    }
}
