// What a person has to know before the program is used, under the barrier board.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Column {
    id: list

    required property list<string> sentences
    property string spoken

    spacing: Tokens.inset
    Accessible.role: Accessible.StaticText
    Accessible.name: list.spoken

    FindingSign {
        kind: FindingSign.Board
        width: parent.width
        height: Tokens.barrierHeight
        ink: Tokens.edge
        tape: Tokens.tape
        tapeInk: Tokens.tapeInk
    }

    Repeater {
        model: list.sentences

        InkText {
            required property int index
            required property string modelData

            width: list.width
            text: modelData
            bold: index === 0
            font.pixelSize: index === 0 ? Tokens.mainText : Tokens.labelText
            wrapMode: Text.Wrap
        }
    }
}
