// A rail that nobody has drawn yet: two rails and posts, dashed, on their ground.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: rail

    readonly property int posts: 9
    readonly property real bay: (width - Tokens.margin * 2) / (posts - 1)

    Repeater {
        model: rail.posts

        DashedBar {
            required property int index

            x: Tokens.margin + index * rail.bay
            height: rail.height
            width: Tokens.keyEdge
        }
    }

    Repeater {
        model: 2

        DashedBar {
            required property int index

            y: index * rail.height / 2
            width: rail.width
            height: Tokens.keyEdge
            lying: true
        }
    }

    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.concreteLine
    }
}
