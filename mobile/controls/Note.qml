// A note about the chosen part: a sheet with a chalk frame.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: note

    default property alias content: inside.data

    implicitHeight: inside.childrenRect.height + Tokens.inset * 2
    color: Tokens.sheet
    border.color: Tokens.chalk
    border.width: Tokens.noteStroke
    Accessible.role: Accessible.Grouping

    Item {
        id: inside

        anchors.fill: parent
        anchors.margins: Tokens.inset
    }
}
