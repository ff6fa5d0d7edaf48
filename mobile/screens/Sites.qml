// Sites: which rails there are, how they stand, and when somebody is to come. Touch a run to walk it.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Room {
    id: room

    required property SitesModel sites
    required property RegisterPages pages
    readonly property bool laysOut: pages.run.open
    readonly property bool changes: pages.change.open
    readonly property bool registers: laysOut || changes || pages.site.open
    readonly property real runsWidth: portrait ? width - Tokens.margin * 2 : width - Tokens.siteColumn - Tokens.dueTagWidth - Tokens.margin * 3
    property real pixelsPerMetre: Tokens.bandScaleMost

    signal tabletWanted

    function fit() {
        room.pixelsPerMetre = room.sites.pixelsPerMetre(room.runsWidth, Tokens.margin * 2, Tokens.bandScaleLeast, Tokens.bandScaleMost, names.font);
    }

    whereLine: laysOut ? qsTr("%1 · a new run").arg(pages.run.siteName) : changes ? pages.change.runName : registers ? pages.site.name : sites.known ? qsTr("%1 · %2").arg(sites.ownerName).arg(sites.countWords) : ""
    cells: SitesCells {
        sites: room.sites
        portrait: room.portrait
        onTabletWanted: room.tabletWanted()
        registering: !room.registers ? "" : room.laysOut ? room.pages.run.siteName : room.changes ? room.pages.change.runName : room.pages.site.isNew ? qsTr("a new site") : room.pages.site.name
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
        visible: !room.sites.empty && !room.registers
        Accessible.role: Accessible.List
        Accessible.name: qsTr("Sites")

        delegate: SiteBand {
            width: list.width
            pixelsPerMetre: room.pixelsPerMetre
            portrait: room.portrait
            onRunChosen: (site, run) => room.sites.openRun(site, run)
            onDayWanted: site => room.sites.prepareDay(site)
            onNameChosen: site => room.sites.openSite(site)
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
        visible: !room.sites.empty && !room.registers
        pixelsPerMetre: room.pixelsPerMetre
        metres: room.sites.roundMetres(Tokens.scaleBarWidth, room.pixelsPerMetre)
        keyRoom: newSite.visible ? newSite.width : 0

        OctagonKey {
            id: newSite

            objectName: "registerSite"
            visible: room.pages.site.writable
            anchors.right: parent.right
            anchors.rightMargin: Tokens.inset
            anchors.verticalCenter: parent.verticalCenter
            height: Tokens.touchTarget
            text: qsTr("Register a site")
            textSize: Tokens.labelText
            onClicked: room.pages.site.begin()
        }
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
        visible: room.sites.empty && !room.registers
        heading: qsTr("No rail is drawn yet.")
        text: qsTr("Register the first site here, bring a register in from CSV files with kneerail import, or make the invented harbour with kneerail demo.")
        way: room.pages.site.writable ? qsTr("Register a site") : ""
        onWayTaken: room.pages.site.begin()
    }

    NoSites {
        anchors.fill: parent
        visible: room.sites.trouble !== "" && !room.sites.known
        heading: qsTr("The sites could not be read.")
        text: room.sites.trouble
    }

    MadeOnce {
        shown: room.registers && !room.laysOut && !room.changes

        SiteSheet {
            objectName: "siteSheet"
            anchors.fill: parent
            focus: visible
            site: room.pages.site
            portrait: room.portrait
        }
    }

    MadeOnce {
        shown: room.laysOut

        RegisterRun {
            objectName: "registerRun"
            anchors.fill: parent
            focus: visible
            sentence: room.pages.run
            portrait: room.portrait
        }
    }

    MadeOnce {
        shown: room.changes

        AlterRun {
            objectName: "alterRun"
            anchors.fill: parent
            focus: visible
            change: room.pages.change
            portrait: room.portrait
        }
    }
}
