using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Studio.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class WorkingHours : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "DaysOff",
                table: "StudioSettings",
                type: "text",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<int>(
                name: "DeliveryDays",
                table: "StudioSettings",
                type: "integer",
                nullable: false,
                defaultValue: 2);

            migrationBuilder.AddColumn<int>(
                name: "ReserveDays",
                table: "StudioSettings",
                type: "integer",
                nullable: false,
                defaultValue: 3);

            migrationBuilder.AddColumn<double>(
                name: "UsualRoomC",
                table: "StudioSettings",
                type: "double precision",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "WorkDays",
                table: "StudioSettings",
                type: "text",
                nullable: false,
                defaultValue: "[\"mon\",\"tue\",\"wed\",\"thu\",\"fri\"]");

            migrationBuilder.AddColumn<TimeOnly>(
                name: "WorkFrom",
                table: "StudioSettings",
                type: "time without time zone",
                nullable: false,
                defaultValue: new TimeOnly(9, 0, 0));

            migrationBuilder.AddColumn<int>(
                name: "WorkMinutesPerDay",
                table: "StudioSettings",
                type: "integer",
                nullable: false,
                defaultValue: 240);

            migrationBuilder.AddColumn<TimeOnly>(
                name: "WorkUntil",
                table: "StudioSettings",
                type: "time without time zone",
                nullable: false,
                defaultValue: new TimeOnly(17, 0, 0));
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "DaysOff",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "DeliveryDays",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "ReserveDays",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "UsualRoomC",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "WorkDays",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "WorkFrom",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "WorkMinutesPerDay",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "WorkUntil",
                table: "StudioSettings");
        }
    }
}
