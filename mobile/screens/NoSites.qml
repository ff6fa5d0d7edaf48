// No site is there yet, or the register could not be read: a dashed rail, what is so, and the ways in.
import QtQuick
import Kneerail.Ui

Item {
    id: page

    property string heading
    property string text
    /// A way in that is a key; empty: there is none.
    property string way

    signal wayTaken

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

        OctagonKey {
            objectName: "wayIn"
            visible: page.way !== ""
            anchors.horizontalCenter: parent.horizontalCenter
            width: Tokens.padWidth
            height: Tokens.mainActHeight
            look: KeyFace.Act
            text: page.way
            textSize: Tokens.mainText
            onClicked: page.wayTaken()
        }
    }
}
