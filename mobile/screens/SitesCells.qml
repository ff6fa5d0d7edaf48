// Sites' cells of the title block: whose rails these are, and what is kept here.
import QtQuick
import Kneerail.Ui

Row {
    id: cells

    required property SitesModel sites
    property bool portrait: false
    /// The site that a run is laid out at; empty: none is.
    property string registering

    signal tabletWanted

    height: parent ? parent.height : implicitHeight

    TitleCell {
        visible: cells.sites.known && !cells.portrait
        tells: true
        caption: cells.registering !== "" ? qsTr("Register") : cells.sites.ownerName
        text: cells.registering !== "" ? cells.registering : cells.sites.countWords
    }

    TitleCell {
        objectName: "tabletCell"
        caption: qsTr("Kept here")
        text: cells.sites.known ? cells.sites.keptWords : qsTr("This tablet")
        onClicked: cells.tabletWanted()
    }
}
