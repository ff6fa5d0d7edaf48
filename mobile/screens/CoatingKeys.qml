// The digits under the thumb: they land in the slots on the drawing. There is no decimal key.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Grid {
    id: pad

    readonly property real keyWidth: (width - spacing * 2) / 3
    readonly property real keyHeight: (height - spacing * 3) / 4

    /// A reading may be under zero: the sign takes the place of the next slot.
    property bool signs: false

    signal digit(digit: int)
    signal signed
    signal nextSlot
    signal erase

    columns: 3
    spacing: Tokens.gap

    Repeater {
        model: [7, 8, 9, 4, 5, 6, 1, 2, 3]

        DigitKey {
            required property int modelData

            objectName: "digit" + modelData
            width: pad.keyWidth
            height: pad.keyHeight
            text: modelData
            onClicked: pad.digit(modelData)
        }
    }

    OctagonKey {
        objectName: "sign"
        visible: pad.signs
        width: pad.keyWidth
        height: pad.keyHeight
        look: OctagonKey.Soft
        text: "\u2212"
        textSize: Tokens.digitText
        spoken: qsTr("Under zero, or over it")
        onClicked: pad.signed()
    }

    OctagonKey {
        objectName: "nextSlot"
        visible: !pad.signs
        width: pad.keyWidth
        height: pad.keyHeight
        look: OctagonKey.Soft
        spoken: qsTr("Next slot")
        onClicked: pad.nextSlot()
        sign: KeySign {
            kind: KeySign.NextSlot
            ink: Tokens.ink
            chalk: Tokens.chalk
            chalkLight: Tokens.chalkLight
            width: pad.keyWidth - Tokens.margin * 2
            height: Tokens.digitText * 2
        }
    }

    DigitKey {
        objectName: "digit0"
        width: pad.keyWidth
        height: pad.keyHeight
        text: "0"
        onClicked: pad.digit(0)
    }

    OctagonKey {
        objectName: "erase"
        width: pad.keyWidth
        height: pad.keyHeight
        look: OctagonKey.Soft
        spoken: qsTr("Take the last digit back")
        onClicked: pad.erase()
        sign: KeySign {
            kind: KeySign.Erase
            ink: Tokens.ink
            width: Tokens.signWidth
            height: Tokens.signHeight
        }
    }
}
