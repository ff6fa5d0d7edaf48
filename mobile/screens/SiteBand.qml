// A site in the list: its name and counts, its runs to one scale, why somebody is to come, and the tag that says when.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Rectangle {
    id: band

    required property int index
    required property string name
    required property string air
    required property string counts
    required property string lastVisit
    required property string sentence
    required property string tagCaption
    required property string tagDay
    required property bool tagSoon
    required property string spoken
    required property SiteRunsModel runs
    property real pixelsPerMetre: Tokens.bandScaleMost
    property bool portrait: false

    signal runChosen(int site, int run)
    signal dayWanted(int site)
    signal nameChosen(site: int)

    implicitHeight: Math.max(head.y + head.implicitHeight, day.y + day.height, why.y + why.implicitHeight) + Tokens.inset
    color: band.index % 2 === 0 ? Tokens.sheet : Tokens.paper
    Accessible.role: Accessible.Grouping
    Accessible.name: band.spoken

    TouchItem {
        id: sheetKey

        objectName: "siteName" + band.index
        x: head.x - Tokens.smallGap * 2
        y: head.y - Tokens.smallGap
        width: head.width + Tokens.smallGap * 2
        height: Math.max(Tokens.touchTarget, head.implicitHeight + Tokens.smallGap * 2)
        activeFocusOnTab: true
        Accessible.role: Accessible.Button
        Accessible.name: qsTr("The sheet of %1").arg(band.name)
        onClicked: band.nameChosen(band.index)

        Rectangle {
            anchors.fill: parent
            visible: sheetKey.pressed || sheetKey.visualFocus
            color: sheetKey.pressed ? Tokens.chalkLight : "transparent"
            border.color: Tokens.ink
            border.width: sheetKey.visualFocus ? Tokens.focusRing : 0
        }
    }

    Column {
        id: head

        x: Tokens.margin
        y: Tokens.inset
        width: (band.portrait ? tag.x : Tokens.siteColumn) - x - Tokens.inset

        InkText {
            width: parent.width
            text: band.name
            bold: true
            font.pixelSize: Tokens.gradeText
            elide: Text.ElideRight
        }

        InkText {
            width: parent.width
            visible: text !== ""
            text: band.air
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }

        InkText {
            width: parent.width
            text: band.portrait ? qsTr("%1 · %2").arg(band.counts).arg(band.lastVisit) : band.counts
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            elide: Text.ElideRight
        }

        InkText {
            width: parent.width
            visible: !band.portrait
            text: band.lastVisit
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            elide: Text.ElideRight
        }
    }

    Flow {
        id: rails

        spacing: Tokens.gap
        x: band.portrait ? Tokens.smallGap : Tokens.siteColumn
        y: band.portrait ? head.y + head.implicitHeight + Tokens.gap : head.y
        width: (band.portrait ? band.width - Tokens.margin : tag.x) - x

        Repeater {
            model: band.runs

            SiteRunDrawing {
                pixelsPerMetre: band.pixelsPerMetre
                onChosen: run => band.runChosen(band.index, run)
            }
        }
    }

    InkText {
        id: why

        x: rails.x + Tokens.inset
        y: rails.y + Math.max(rails.implicitHeight, band.portrait ? 0 : Tokens.dueTagHeight) + Tokens.smallGap
        width: (band.portrait ? band.width : tag.x) - x - Tokens.margin
        text: band.sentence
        color: Tokens.ink2
        font.pixelSize: Tokens.bodyText
        wrapMode: Text.Wrap
    }

    DueTag {
        id: tag

        x: band.width - width - Tokens.inset
        y: band.portrait ? head.y : rails.y + Tokens.margin
        caption: band.tagCaption
        day: band.tagDay
        soon: band.tagSoon
    }

    OctagonKey {
        id: day

        objectName: "prepareDay" + band.index
        anchors.right: tag.right
        y: tag.y + tag.height + Tokens.gap
        width: tag.width
        text: qsTr("Prepare a day")
        spoken: qsTr("Prepare a day at %1").arg(band.name)
        textSize: Tokens.bodyText
        onClicked: band.dayWanted(band.index)
    }

    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: Tokens.hairStroke
        color: Tokens.line
    }
}
