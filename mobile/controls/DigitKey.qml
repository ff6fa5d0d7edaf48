// A digit of the pad, 20 mm wide.
import QtQuick
import Kneerail.Ui

OctagonKey {
    implicitWidth: Tokens.digitKeyWidth
    implicitHeight: Tokens.digitKeyHeight
    textSize: Tokens.digitText
}
