// The window: the top rail with its tags, and the room that is open.
import QtQuick
import QtQuick.Window
import Kneerail.Ui

Window {
    id: window

    visible: true
    width: Screen.width
    height: Screen.height
    title: qsTr("Kneerail")
    color: Tokens.paper
}
