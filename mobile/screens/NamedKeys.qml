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

    signal chosen(place: int)

    spacing: Tokens.gap

    InkText {
        width: parent.width
        text: list.caption
        bold: true
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
                look: index === list.now ? OctagonKey.Chosen : OctagonKey.Plain
                text: modelData
                onClicked: list.chosen(index)
            }
        }
    }
}
