// Where a visit is signed and sealed: the name, what the seal does, its digest, the slide, and a way to leave it open.
import QtQuick
import Kneerail.Ui

Item {
    id: signing

    required property VisitClose visit
    property bool portrait: false
    readonly property bool closed: visit.sealed

    signal gone

    InkText {
        id: heading

        text: signing.closed ? qsTr("Signed and sealed") : qsTr("Sign here")
        bold: true
        font.pixelSize: Tokens.labelText
    }

    Octagon {
        id: sheet

        y: heading.height + Tokens.gap
        width: signing.portrait ? (parent.width - Tokens.margin) / 2 : parent.width
        height: Tokens.mainActHeight * 1.9
        fill: Tokens.sheet
        edge: Tokens.edge
        edgeWidth: Tokens.keyEdge
        cut: Tokens.keyCut

        Rectangle {
            x: Tokens.margin
            y: parent.height * 0.8
            width: parent.width - Tokens.margin * 2
            height: Tokens.keyEdge / 2
            color: Tokens.line
        }

        Signature {
            id: name

            objectName: "signature"
            anchors.fill: parent
            anchors.margins: Tokens.keyEdge
            enabled: !signing.closed
            ink: Tokens.ink
            stroke: Tokens.slotEdgeHere
            Accessible.role: Accessible.Canvas
            Accessible.name: name.written ? qsTr("Signature, written") : qsTr("Signature, empty")
        }
    }

    InkText {
        id: who

        anchors.verticalCenter: wipe.verticalCenter
        text: signing.visit.signedBy
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
    }

    OctagonKey {
        id: wipe

        objectName: "wipe"
        x: sheet.width - width
        y: sheet.y + sheet.height + Tokens.gap
        enabled: !signing.closed && name.written
        text: qsTr("Wipe")
        textSize: Tokens.bodyText
        onClicked: name.wipe()
    }

    Column {
        id: words

        x: signing.portrait ? sheet.width + Tokens.margin : 0
        y: signing.portrait ? sheet.y : wipe.y + wipe.height + Tokens.gap
        width: parent.width - x
        spacing: Tokens.gap / 2

        InkText {
            text: qsTr("What the seal does")
            bold: true
        }

        InkText {
            objectName: "sealWords"
            width: parent.width
            text: signing.visit.sealWords
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
        }

        InkText {
            objectName: "sealDigest"
            topPadding: Tokens.gap
            text: signing.visit.digest
            bold: true
            font.family: Tokens.digestFamily
        }

        InkText {
            text: qsTr("digest of what is here of this site")
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
        }
    }

    InkText {
        objectName: "closeMessage"
        anchors.bottom: slide.top
        anchors.bottomMargin: Tokens.gap
        width: parent.width
        text: signing.visit.message
        color: Tokens.rust
        bold: true
        font.pixelSize: Tokens.smallText
        wrapMode: Text.Wrap
    }

    SealSlide {
        id: slide

        objectName: "sealSlide"
        y: leave.y - height - told.height - Tokens.gap
        width: parent.width
        visible: signing.visit.known
        closed: signing.closed
        onSealed: signing.visit.seal(name.picture())
    }

    InkText {
        id: told

        anchors.bottom: leave.top
        anchors.bottomMargin: Tokens.gap
        width: parent.width
        text: signing.closed ? qsTr("What is entered from now on is of another visit.") : name.written ? qsTr("Slide the sleeve over the joint to seal") : qsTr("Slide the sleeve over the joint to seal without a signature")
        font.pixelSize: Tokens.smallText
        horizontalAlignment: Text.AlignHCenter
        wrapMode: Text.Wrap
    }

    OctagonKey {
        id: leave

        objectName: "leaveClose"
        y: parent.height - height
        width: parent.width
        text: signing.closed ? qsTr("Back to the walk") : qsTr("Leave open and go on")
        textSize: Tokens.labelText
        onClicked: signing.gone()
    }
}
