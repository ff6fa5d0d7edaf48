// One run of the visit that is closed: its posts on a line, and under it what was not reached and why.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: run

    required property string name
    required property RunPicture picture
    required property list<int> from
    required property list<int> to
    required property list<string> why
    /// The same, a line each.
    required property string whyLines
    required property string spoken

    readonly property real leastWidth: Math.max(heading.implicitWidth, reasons.implicitWidth) + Tokens.margin

    implicitHeight: line.y + line.height + (why.length > 0 ? Tokens.smallText * 2 : Tokens.smallGap)
    Accessible.role: Accessible.StaticText
    Accessible.name: run.spoken

    InkText {
        id: heading

        text: run.name
        bold: true
    }

    RunLineItem {
        id: line

        y: heading.height + Tokens.smallGap
        width: parent.width
        height: Tokens.runLineHeight * 0.73
        picture: run.picture
        enabled: false
    }

    // As wide as the longest reason, which stands under its stretch.
    InkText {
        id: reasons

        visible: false
        text: run.whyLines
        font.pixelSize: Tokens.smallText
    }

    Repeater {
        model: run.why.length

        Item {
            id: stretch

            required property int index
            readonly property real begins: line.xOfPost(run.from[index])
            readonly property real ends: line.xOfPost(run.to[index])

            x: begins
            y: line.y + line.height
            width: Math.max(ends - begins, Tokens.gap)

            Rectangle {
                width: parent.width
                height: Tokens.keyEdge
                color: Tokens.ink2
            }

            InkText {
                x: Math.max(-stretch.x, Math.min((stretch.width - width) / 2, run.width - stretch.x - width))
                y: Tokens.smallGap
                text: run.why[stretch.index]
                color: Tokens.ink2
                font.pixelSize: Tokens.smallText
            }
        }
    }
}
