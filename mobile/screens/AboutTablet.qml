// What the program is, and where it keeps what is entered.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Column {
    id: about

    required property list<string> lines

    spacing: Tokens.smallGap

    Repeater {
        model: about.lines

        InkText {
            required property string modelData

            width: about.width
            text: modelData
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
        }
    }
}
