package org.culvert.road.traffic;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What a column of a file of counts may hold, and what it is often called. */
enum TrafficColumn {
    STATION(
            "stationAttribute",
            "station",
            "stationid",
            "site",
            "siteid",
            "siteno",
            "sitenumber",
            "countid",
            "counterid"),
    ROAD("roadAttribute", "road", "roadname", "street", "streetname", "route", "roadno", "roadnumber"),
    YEAR("yearAttribute", "year", "yr", "countyear", "aadtyear", "yearofcount"),
    FROM("fromAttribute", "from", "startdate", "datefrom", "countstart", "start"),
    TO("toAttribute", "to", "enddate", "dateto", "countend", "end"),
    VEHICLES(
            "vehiclesPerDayAttribute",
            "aadt",
            "vehiclesperday",
            "vpd",
            "adt",
            "aadttotal",
            "trafficvolume",
            "volume",
            "dailytraffic",
            "annualaveragedailytraffic"),
    STANDARD_ERROR("standardErrorAttribute", "standarderror", "stderr", "se"),
    DAYS("daysCountedAttribute", "dayscounted", "countdays", "days", "noofdays"),
    DIRECTION("directionAttribute", "direction", "dir", "directionoftravel", "flowdirection"),
    HEAVY(
            "heavyVehicleAttribute",
            "heavyvehicleshare",
            "heavyshare",
            "heavy",
            "pctheavy",
            "heavypct",
            "percentheavy",
            "heavypercent",
            "pchv",
            "hv",
            "heavyvehicles"),
    KIND("kindAttribute", "kind", "method", "counttype", "stationtype", "sitetype");

    private final String parameter;
    private final List<String> names;

    TrafficColumn(String parameter, String... names) {
        this.parameter = parameter;
        this.names = List.of(names);
    }

    /** The parameter that names the column. */
    String parameter() {
        return parameter;
    }

    /** The columns that are called as such a column often is. */
    List<String> among(List<String> columns) {
        return columns.stream().filter(column -> names.contains(plain(column))).toList();
    }

    /** The column of a parameter. */
    static TrafficColumn of(String parameter) {
        return Arrays.stream(values())
                .filter(column -> column.parameter.equals(parameter))
                .findFirst()
                .orElseThrow();
    }

    private static String plain(String column) {
        return column.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }
}
