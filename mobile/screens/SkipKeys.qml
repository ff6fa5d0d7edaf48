// Skip, say why: the stretch that was not reached and its reason. It stays open and due.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: pad

    property string stretch
    readonly property list<string> reasons: [qsTr("Locked"), qsTr("Water"), qsTr("Blocked"), qsTr("Unsafe"), qsTr("No time"), qsTr("Struck"), qsTr("Other")]
    property bool wide: false
    readonly property int rowCount: Math.ceil((reasons.length + 1) / keys.columns)

    /// By the code of the record.
    signal because(reason: int)
    signal leave

    Column {
        anchors.fill: parent
        spacing: Tokens.gap

        InkText {
            id: heading

            width: parent.width
            text: pad.stretch
            bold: true
            font.pixelSize: Tokens.labelText
            wrapMode: Text.Wrap
        }

        InkText {
            id: hint

            width: parent.width
            text: qsTr("Drag along the run line to the end of the stretch, then say why. It stays open and due.")
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
        }

        Grid {
            id: keys

            readonly property real keyWidth: (width - spacing * (columns - 1)) / columns
            readonly property real keyHeight: (pad.height - heading.height - hint.height - Tokens.gap * 2 - spacing * (pad.rowCount - 1)) / pad.rowCount

            width: parent.width
            columns: pad.wide ? 4 : 2
            spacing: Tokens.gap

            Repeater {
                model: pad.reasons

                OctagonKey {
                    required property int index
                    required property string modelData

                    objectName: "reason" + (index + 1)
                    width: keys.keyWidth
                    height: keys.keyHeight
                    text: modelData
                    textSize: Tokens.labelText
                    onClicked: pad.because(index + 1)
                }
            }

            OctagonKey {
                objectName: "leaveSkip"
                width: keys.keyWidth
                height: keys.keyHeight
                look: OctagonKey.Soft
                text: qsTr("Back to the post")
                textSize: Tokens.labelText
                onClicked: pad.leave()
            }
        }
    }
}
