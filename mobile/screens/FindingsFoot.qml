// Under the hung findings: what their order means, this run or all of the site, those that are ended, and a new one.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: foot

    required property FindingsModel findings
    property bool portrait: false
    property bool more: false
    readonly property real keyWidth: portrait ? (width - Tokens.pageMargin * 2 - Tokens.gap * 2) / 3 : Tokens.tagWidth * 1.75

    signal findWanted

    implicitHeight: portrait ? words.height + keys.height + Tokens.margin * 3 : Tokens.mainActHeight + Tokens.margin
    color: Tokens.shade

    Rectangle {
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.edge
    }

    Column {
        id: words

        x: Tokens.pageMargin
        y: foot.portrait ? Tokens.margin : (parent.height - height) / 2
        width: foot.portrait ? parent.width - Tokens.pageMargin * 2 : keys.x - Tokens.pageMargin - Tokens.gap
        spacing: Tokens.smallGap

        InkText {
            width: parent.width
            text: qsTr("Cannot wait hangs first, then by what comes due.")
            bold: true
            wrapMode: Text.Wrap
        }

        InkText {
            width: parent.width
            text: foot.more ? qsTr("Push the rail left for the others. Touch a tag to open it.") : qsTr("Touch a tag to open it.")
            visible: foot.findings.count > 0
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
        }
    }

    Row {
        id: keys

        x: foot.portrait ? Tokens.pageMargin : parent.width - width - Tokens.margin
        y: foot.portrait ? words.y + words.height + Tokens.margin : (parent.height - height) / 2
        spacing: Tokens.gap

        OctagonKey {
            objectName: "runOnly"
            width: foot.keyWidth
            height: Tokens.mainActHeight * 0.9
            look: foot.findings.runOnly ? KeyFace.Chosen : KeyFace.Plain
            text: qsTr("This run only")
            textSize: Tokens.labelText
            onClicked: foot.findings.runOnly = !foot.findings.runOnly
        }

        OctagonKey {
            objectName: "endedToo"
            width: foot.keyWidth
            height: Tokens.mainActHeight * 0.9
            look: foot.findings.endedToo ? KeyFace.Chosen : KeyFace.Plain
            text: qsTr("Mended too")
            secondLine: foot.findings.endedWords
            textSize: Tokens.labelText
            secondTextSize: Tokens.smallText
            onClicked: foot.findings.endedToo = !foot.findings.endedToo
        }

        OctagonKey {
            objectName: "newFinding"
            width: foot.keyWidth
            height: Tokens.mainActHeight * 0.9
            look: KeyFace.Act
            text: qsTr("New finding")
            textSize: Tokens.labelText
            onClicked: foot.findWanted()
        }
    }
}
