// A rail as it stands: two rails and posts on their ground.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: rail

    property int posts: 7
    readonly property real bay: (width - Tokens.margin * 2 - tube) / (posts - 1)
    readonly property real tube: Tokens.tubeHeight

    Repeater {
        model: 2

        SleeveTube {
            required property int index

            y: index * rail.height * 0.45
            width: rail.width
            height: rail.tube + Tokens.keyEdge
            sleeve: false
            stroke: Tokens.keyEdge
            zinc: Tokens.zinc
            light: Tokens.zincLight
            shade: Tokens.zincShade
            edge: Tokens.edge
        }
    }

    Repeater {
        model: rail.posts

        Rectangle {
            required property int index

            x: Tokens.margin + index * rail.bay
            width: rail.tube
            height: rail.height
            color: Tokens.zinc
            border.color: Tokens.edge
            border.width: Tokens.ruleStroke
        }
    }

    Rectangle {
        y: rail.height
        width: rail.width
        height: Tokens.inset
        color: Tokens.concrete

        Rectangle {
            width: parent.width
            height: Tokens.keyEdge
            color: Tokens.concreteLine
        }
    }
}
