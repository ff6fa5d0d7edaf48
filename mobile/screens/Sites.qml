// Sites: which rails there are, how they stand, and when somebody is to come. Touch a run to walk it.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Room {
    id: room

    required property SitesModel sites
    readonly property real runsWidth: portrait ? width - Tokens.margin * 2 : width - Tokens.siteColumn - Tokens.dueTagWidth - Tokens.margin * 3
    property real pixelsPerMetre: Tokens.bandScaleMost

    signal tabletWanted

    function fit() {
        room.pixelsPerMetre = room.sites.pixelsPerMetre(room.runsWidth, Tokens.margin * 2, Tokens.bandScaleLeast, Tokens.bandScaleMost, names.font);
    }

    whereLine: sites.known ? qsTr("%1 · %2").arg(sites.ownerName).arg(sites.countWords) : ""
    cells: SitesCells {
        sites: room.sites
        portrait: room.portrait
        onTabletWanted: room.tabletWanted()
    }
    Component.onCompleted: room.fit()
    onRunsWidthChanged: room.fit()

    Connections {
        target: room.sites

        function onChanged() {
            room.fit();
        }
    }

    Rectangle {
        anchors.fill: parent
        color: Tokens.paper
    }

    InkText {
        id: names

        visible: false
        font.pixelSize: Tokens.smallText
        onFontChanged: room.fit()
    }

    ListView {
        id: list

        objectName: "bands"
        anchors.top: parent.top
        anchors.bottom: foot.top
        width: parent.width
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        model: room.sites
        visible: !room.sites.empty
        Accessible.role: Accessible.List
        Accessible.name: qsTr("Sites")

        delegate: SiteBand {
            width: list.width
            pixelsPerMetre: room.pixelsPerMetre
            portrait: room.portrait
            onRunChosen: (site, run) => room.sites.openRun(site, run)
            onDayWanted: site => room.sites.prepareDay(site)
            Component.onCompleted: room.sites.inView(index)
        }
    }

    Rectangle {
        objectName: "moreBelow"
        anchors.bottom: foot.top
        width: parent.width
        height: more.implicitHeight + Tokens.gap
        visible: list.visible && list.contentHeight - list.contentY > list.height + Tokens.inset
        color: Tokens.tapeMeasure

        Rectangle {
            width: parent.width
            height: Tokens.keyEdge
            color: Tokens.edge
        }

        InkText {
            id: more

            anchors.centerIn: parent
            text: qsTr("more below: push the list up")
            font.pixelSize: Tokens.smallText
        }
    }

    ScaleBar {
        id: foot

        anchors.bottom: parent.bottom
        width: parent.width
        visible: !room.sites.empty
        pixelsPerMetre: room.pixelsPerMetre
        metres: room.sites.roundMetres(Tokens.scaleBarWidth, room.pixelsPerMetre)
    }

    MessageBar {
        objectName: "readAgain"
        anchors.bottom: foot.top
        anchors.bottomMargin: Tokens.gap
        x: Tokens.inset
        width: parent.width - Tokens.inset * 2
        text: room.sites.known && room.sites.trouble !== "" ? qsTr("The sites could not be read again; they stand as they were. %1").arg(room.sites.trouble) : ""
        canTryAgain: true
        onTryAgain: room.sites.refresh()
    }

    NoSites {
        objectName: "noSites"
        anchors.fill: parent
        visible: room.sites.empty
        heading: qsTr("No rail is drawn yet.")
        text: qsTr("Bring a register in from CSV files with kneerail import, or make the invented harbour with kneerail demo. Then open this again.")
    }

    NoSites {
        anchors.fill: parent
        visible: room.sites.trouble !== "" && !room.sites.known
        heading: qsTr("The sites could not be read.")
        text: room.sites.trouble
    }
}
