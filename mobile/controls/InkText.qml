// Words in the type of the screens.
import QtQuick
import Kneerail.Ui

Text {
    property bool bold: false

    color: Tokens.ink
    font.family: Tokens.textFamily
    font.pixelSize: Tokens.bodyText
    font.bold: bold
    textFormat: Text.PlainText
}
