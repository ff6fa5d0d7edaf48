// No site is there yet, or the register could not be read: a dashed rail, what is so, and the ways in.
import QtQuick
import Kneerail.Ui

Item {
    id: page

    property string heading
    property string text

    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("%1 %2").arg(page.heading).arg(page.text)

    Column {
        anchors.centerIn: parent
        width: Math.min(parent.width - Tokens.pageMargin * 2, Tokens.padWidth * 2)
        spacing: Tokens.pageMargin

        EmptyRail {
            width: parent.width
            height: Tokens.sleeveHeight * 2
        }

        InkText {
            width: parent.width
            text: page.heading
            bold: true
            font.pixelSize: Tokens.slotText
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.Wrap
        }

        InkText {
            width: parent.width
            text: page.text
            color: Tokens.ink2
            font.pixelSize: Tokens.labelText
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.Wrap
        }
    }
}
