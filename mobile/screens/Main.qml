// The window: the top rail with its tags and title block, and the rooms under it, which stay as they were left.
import QtQuick
import Kneerail.Ui

Window {
    id: window

    required property WalkModel walk
    required property VisitClose close
    required property SitesModel sites
    required property RegisterPages pages
    required property FindingsModel findings
    required property HazardLine hazards
    required property ForecastModel forecast
    required property ThisTablet tablet
    required property PrepareModel prepare
    /// Somebody walked here before: the window stands there again.
    required property bool walked
    /// The room of the walk, where it was made before the window.
    property Room walkAhead: null
    readonly property int firstPlace: walked ? Place.Walk : Place.Sites
    property int place: tablet.cautionsRead ? firstPlace : Place.Tablet
    /// Where the tablet's own room leads back to.
    property int placeBefore: firstPlace
    readonly property bool portrait: height > width
    readonly property Room room: place === Place.Sites ? sitesRoom.room : place === Place.Forecast ? forecastRoom.room : place === Place.Findings ? findingsRoom.room : place === Place.Tablet ? tabletRoom.room : place === Place.Prepare ? prepareRoom.room : walkRoom.room

    function showTablet() {
        if (window.place !== Place.Tablet)
            window.placeBefore = window.place;
        window.place = Place.Tablet;
    }

    visible: true
    width: Screen.width
    height: Screen.height
    title: qsTr("Kneerail")
    color: Tokens.paper

    onPlaceChanged: {
        if (place !== Place.Walk)
            window.walk.leave();
        if (place === Place.Sites)
            window.sites.refresh();
    }

    Connections {
        target: window.prepare

        function onWalkWanted() {
            window.place = Place.Walk;
        }
    }

    Connections {
        target: window.sites

        function onRunOpened() {
            window.place = Place.Walk;
        }

        function onDayWanted() {
            window.place = Place.Prepare;
        }
    }

    Connections {
        target: window.walk

        function onForecastWanted() {
            window.place = Place.Forecast;
        }
    }

    Connections {
        target: window.findings

        function onWalkWanted() {
            if (window.place === Place.Findings && window.findings.opened >= 0)
                window.place = Place.Walk;
        }
    }

    Connections {
        target: window.forecast

        function onWalkWanted() {
            window.place = Place.Walk;
        }
    }

    Shortcut {
        sequence: "F1"
        onActivated: window.showTablet()
    }

    TagRail {
        id: rail

        z: 1
        width: parent.width

        RoomTags {
            visible: window.tablet.cautionsRead
            place: window.place
            onChosen: place => {
                if (place === Place.Forecast)
                    window.walk.askForecast();
                window.place = place;
            }
        }

        cells: [
            HazardCells {
                id: standing

                findings: window.findings
                line: window.hazards
                says: window.tablet.cautionsRead
                room: window.room
                onFindingWanted: window.place = Place.Findings
            },
            Item {
                readonly property Item own: window.room ? window.room.cells : null
                width: own ? own.width : 0
                height: parent.height
                children: own ? [own] : []
            }
        ]
    }

    SiteLine {
        id: siteLine

        visible: window.portrait
        y: rail.height
        width: parent.width
        where: window.room ? window.room.whereLine : ""
        kept: window.room ? window.room.keptLine : ""
        notSafe: standing.inOneLine
        onNotSafeTouched: standing.touch()
    }

    Item {
        y: rail.height + (window.portrait ? siteLine.height : 0)
        width: parent.width
        height: parent.height - y

        RoomLoader {
            id: sitesRoom

            here: window.place === Place.Sites
            portrait: window.portrait
            onWanted: setSource("Sites.qml", {
                objectName: "sitesRoom",
                portrait: window.portrait,
                sites: window.sites, pages: window.pages
            })
        }

        Connections {
            target: sitesRoom.item
            ignoreUnknownSignals: true

            function onTabletWanted() {
                window.showTablet();
            }
        }

        TabletLoader {
            id: tabletRoom

            here: window.place === Place.Tablet
            portrait: window.portrait
            tablet: window.tablet
            onDone: window.place = window.placeBefore
        }

        PrepareLoader {
            id: prepareRoom

            here: window.place === Place.Prepare
            portrait: window.portrait
            prepare: window.prepare
            onGoneBack: window.place = Place.Sites
        }

        RoomLoader {
            id: walkRoom

            ahead: window.walkAhead
            here: window.place === Place.Walk
            portrait: window.portrait
            onWanted: setSource("Walk.qml", {
                objectName: "walkRoom",
                portrait: window.portrait,
                walk: window.walk, close: window.close
            })

            Binding {
                target: window.walk
                property: "shown"
                value: walkRoom.here
            }
        }

        RoomLoader {
            id: findingsRoom

            here: window.place === Place.Findings
            portrait: window.portrait
            onWanted: setSource("Findings.qml", {
                objectName: "findingsRoom",
                portrait: window.portrait,
                findings: window.findings,
                walk: window.walk
            })
        }

        Connections {
            target: findingsRoom.item
            ignoreUnknownSignals: true

            function onFindWanted() {
                window.place = Place.Walk;
                window.walk.openPad(WalkModel.FindingPad);
            }
        }

        RoomLoader {
            id: forecastRoom

            here: window.place === Place.Forecast
            portrait: window.portrait
            onWanted: setSource("ForecastPart.qml", {
                objectName: "forecastRoom",
                portrait: window.portrait,
                forecast: window.forecast
            })
        }

        HazardSheet {
            line: window.hazards
            walk: window.walk
            onFindingWanted: window.place = Place.Findings
        }
    }
}
