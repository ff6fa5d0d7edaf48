// A caption, and one key for each name; the one of now is marked.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Column {
    id: list

    property string caption
    property string named
    property list<string> names
    property int now: -1
    property int columns: 3
    property int textSize: Tokens.keyText
    property int captionSize: Tokens.bodyText

    signal chosen(place: int)

    spacing: Tokens.gap

    InkText {
        width: parent.width
        text: list.caption
        bold: true
        font.pixelSize: list.captionSize
        wrapMode: Text.Wrap
    }

    Grid {
        id: keys

        width: parent.width
        columns: list.columns
        spacing: Tokens.gap

        Repeater {
            model: list.names

            OctagonKey {
                required property int index
                required property string modelData

                objectName: list.named + index
                width: (keys.width - keys.spacing * (list.columns - 1)) / list.columns
                height: Tokens.touchTarget
                look: index === list.now ? KeyFace.Chosen : KeyFace.Plain
                text: modelData
                textSize: list.textSize
                onClicked: list.chosen(index)
            }
        }
    }
}
