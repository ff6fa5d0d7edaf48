// The wall of a tube: where to probe, a slot for each hour of the clock, and the digits under the thumb.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: pad

    required property WallCheck wall
    readonly property real slotWidth: (width - Tokens.gap * 0.75 * 3) / 4

    Column {
        id: heading

        width: parent.width
        spacing: Tokens.smallGap

        InkText {
            objectName: "wallTitle"
            width: parent.width
            text: pad.wall.title
            bold: true
            wrapMode: Text.Wrap
        }

        InkText {
            objectName: "wallFacts"
            width: parent.width
            text: pad.wall.askWords !== "" ? pad.wall.askWords : pad.wall.facts
            color: pad.wall.askWords !== "" ? Tokens.rust : Tokens.ink2
            bold: pad.wall.askWords !== ""
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
        }

        Row {
            spacing: Tokens.gap * 0.75

            Repeater {
                model: pad.wall

                WallSlot {
                    required property int index

                    required text
                    required ghost
                    required current
                    required kept
                    required lookAgain
                    required notKept
                    required clock
                    required spoken
                    objectName: "wallSlot" + index
                    width: pad.slotWidth
                    onClicked: pad.wall.chooseSlot(index)
                }
            }
        }
    }

    CoatingKeys {
        y: heading.height + Tokens.gap
        width: parent.width
        height: parent.height - y
        onDigit: digit => pad.wall.digit(digit)
        onNextSlot: pad.wall.nextSlot()
        onErase: pad.wall.backspace()
    }
}
